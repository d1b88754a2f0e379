import { Approvals } from '../../../server/src/approval/approvals';
import { noAuthors } from '../../../server/src/approval/evaluator';
import { Engine } from '../../../server/src/engine/engine';
import { MemoryHost } from '../../../server/src/host/memoryHost';
import type { OpenProject, Outside } from '../../../server/src/lsp/outside';
import type { Timers } from '../../../server/src/lsp/timers';

/** Timers that go off when a test says so. */
export class StoppedTimers implements Timers {
  private readonly due = new Map<number, () => void>();
  private count = 0;

  after(_milliseconds: number, call: () => void): () => void {
    const id = (this.count += 1);
    this.due.set(id, call);
    return () => this.due.delete(id);
  }

  get waiting(): number {
    return this.due.size;
  }

  /** Lets everything that waits go off, in the order in which it was set. */
  fire(): void {
    const calls = [...this.due.values()];
    this.due.clear();
    for (const call of calls) call();
  }
}

/** Goes off in the next turn of the event loop, however long the wait was meant to be. */
export const immediateTimers: Timers = {
  after(_milliseconds, call) {
    const timer = setImmediate(call);
    return () => clearImmediate(timer);
  },
};

/** Files in memory below `/lab`, as `file:///lab/…`. */
export class MemoryOutside implements Outside {
  readonly host: MemoryHost;
  readonly engine: Engine;
  readonly approvals: Approvals;
  /** Who changed the statements last, as git would tell. */
  lastAuthor: string | null = null;
  readonly revisions = null;
  /** Paths at which a link stands. */
  readonly links = new Set<string>();
  roots: readonly string[] = [];

  constructor(
    files: Readonly<Record<string, string | Uint8Array>>,
    readonly timers: Timers = immediateTimers,
  ) {
    this.host = new MemoryHost(files);
    this.engine = new Engine(this.host);
    this.approvals = new Approvals(this.engine, this.host, {
      ...noAuthors,
      of: () => Promise.resolve(this.lastAuthor),
    });
    this.names = Object.keys(files);
  }

  private readonly names: readonly string[];

  project(): OpenProject {
    return {
      root: '/lab',
      host: this.host,
      engine: this.engine,
      approvals: this.approvals,
      saved: this.host.saved(),
      setText: (path, text) => this.host.setText(path, text),
    };
  }

  forgetAuthors(): void {
    return;
  }

  userName(): Promise<string> {
    return Promise.resolve('M. Ruiz');
  }

  setRoots(folders: readonly string[]): void {
    this.roots = folders;
  }

  pathOf(uri: string): string | null {
    return uri.startsWith('file:///') ? decodeURIComponent(uri.slice('file://'.length)) : null;
  }

  uriOf(path: string): string {
    return `file://${path.split('/').map(encodeURIComponent).join('/')}`;
  }

  isLink(path: string): boolean {
    return this.links.has(path);
  }

  pageOf(code: string): string {
    return `file:///docs/finding-${code}.md`;
  }

  glossFiles(): Promise<readonly string[]> {
    return Promise.resolve(this.names.filter((n) => n.endsWith('.gloss')).map((n) => this.host.resolve('/lab/x', n)));
  }
}
