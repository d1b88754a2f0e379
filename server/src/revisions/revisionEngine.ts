import { Counters } from '../base/counters';
import type { Host } from '../base/host';
import type { FileSource, Turnable } from '../base/source';
import { BoundedMemo } from '../engine/boundedMemo';
import { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';

/** Both sides of a series, and each change tried alone. */
const readingEntries = 400;

const comparisons = 1000;

/**
 * One engine for many revisions: turning it to another source forgets only the files that differ there, and what was
 * computed is remembered by content. One evaluation at a time.
 */
export class RevisionEngine {
  readonly engine: Engine;
  /** Comparisons by the content of both sides. */
  readonly compared = new BoundedMemo(comparisons);
  private queue: Promise<unknown> = Promise.resolve();

  constructor(readonly host: Host & Turnable) {
    this.engine = new Engine(host, new Counters(), readingEntries);
  }

  evaluate(source: FileSource, path: string, text?: string): Promise<Snapshot> {
    return this.inTurn(async () => {
      await this.turn(source);
      return this.engine.evaluate(path, text);
    });
  }

  /** The text of a file there; null where it has none. */
  text(source: FileSource, path: string): Promise<string | null> {
    return this.inTurn(async () => {
      await this.turn(source);
      return this.engine.text(path);
    });
  }

  /** Why a file that is there cannot be read; null: it can, or there is none. */
  unread(source: FileSource, path: string): Promise<string | null> {
    return this.inTurn(async () => {
      await this.turn(source);
      const file = await this.host.read(path);
      return file.ok || file.reason !== 'unreadable' ? null : file.message;
    });
  }

  /** Of the decoded text of a file there, whatever its line ends; null where it cannot be read. */
  identity(source: FileSource, path: string): Promise<string | null> {
    return this.inTurn(async () => {
      await this.turn(source);
      const file = await this.host.read(path);
      return file.ok ? file.identity : null;
    });
  }

  private async turn(source: FileSource): Promise<void> {
    for (const path of await this.host.use(source)) this.engine.invalidate(path);
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const next = this.queue.then(work, work);
    this.queue = next.catch(() => undefined);
    return next;
  }
}
