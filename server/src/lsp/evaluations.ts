import { Cancelled } from '../base/cancellation';
import type { GlossDocument, Results } from '../features/workspace';
import type { Snapshot } from '../engine/snapshot';
import type { Timers } from './timers';

/** Between the last change and the computing (checklist L4: 100 to 200 ms, trailing). */
export const debounce = 120;

export interface EvaluationsOf {
  /** The document as it stands, or null where it is closed. */
  document(uri: string): Promise<GlossDocument | null>;
  /** The snapshot with what lies beside the gloss: its approvals. */
  checked(document: GlossDocument, snapshot: Snapshot): Promise<Snapshot>;
  versionOf(uri: string): number | null;
  finished(uri: string, results: Results): void;
  started(uri: string): void;
  /** Follows every `started`. */
  ended(uri: string): void;
  failed(uri: string, error: unknown): void;
}

interface Running {
  readonly version: number;
  readonly cancellation: { cancelled: boolean };
  readonly done: Promise<void>;
}

/**
 * Keeps the results of open documents up to date: a change calls off what runs for an older text, computing starts when
 * the typing pauses, and what comes late is dropped by its version. The last finished results stay until newer ones are
 * there.
 */
export class Evaluations {
  private readonly last = new Map<string, Results>();
  private readonly waiting = new Map<string, () => void>();
  private readonly running = new Map<string, Running>();
  private readonly revisions = new Map<string, number>();

  constructor(
    private readonly of: EvaluationsOf,
    private readonly timers: Timers,
  ) {}

  results(uri: string): Results | null {
    return this.last.get(uri) ?? null;
  }

  computing(uri: string): boolean {
    return this.waiting.has(uri) || this.running.has(uri);
  }

  /** The text changed (or a file under it): older work is called off; `start`: computing begins after the pause. */
  changed(uri: string, start: boolean): void {
    this.callOff(uri);
    if (start)
      this.waiting.set(
        uri,
        this.timers.after(debounce, () => void this.run(uri)),
      );
  }

  /** Computes now what is not yet computed, and waits for it. */
  async current(uri: string): Promise<Results | null> {
    const version = this.of.versionOf(uri);
    if (version === null) return null;
    const known = this.last.get(uri);
    if (known !== undefined && known.version === version && !this.computing(uri)) return known;
    // While the typing goes on, the pause is waited for: whoever asks early gets no second computing.
    if (this.waiting.has(uri)) await this.pauseOver(uri);
    else if (this.running.get(uri)?.version !== version) await this.run(uri);
    else await this.running.get(uri)!.done;
    const made = this.last.get(uri) ?? null;
    return made !== null && made.version === this.of.versionOf(uri) ? made : null;
  }

  /** Stops computing until the next change; the last results stay. */
  cancel(uri: string): void {
    this.callOff(uri);
  }

  close(uri: string): void {
    this.callOff(uri);
    this.last.delete(uri);
  }

  private readonly afterPause = new Map<string, (() => void)[]>();

  private pauseOver(uri: string): Promise<void> {
    return new Promise((done) => this.afterPause.set(uri, [...(this.afterPause.get(uri) ?? []), done]));
  }

  private released(uri: string): void {
    const waiters = this.afterPause.get(uri) ?? [];
    this.afterPause.delete(uri);
    for (const done of waiters) done();
  }

  private callOff(uri: string): void {
    this.waiting.get(uri)?.();
    this.waiting.delete(uri);
    const running = this.running.get(uri);
    if (running !== undefined) running.cancellation.cancelled = true;
    this.running.delete(uri);
    this.released(uri);
  }

  private run(uri: string): Promise<void> {
    this.waiting.get(uri)?.();
    this.waiting.delete(uri);
    const version = this.of.versionOf(uri);
    if (version === null) {
      this.released(uri);
      return Promise.resolve();
    }
    const cancellation = { cancelled: false };
    const done = this.evaluate(uri, version, cancellation).finally(() => {
      if (this.running.get(uri)?.cancellation === cancellation) this.running.delete(uri);
      this.released(uri);
      this.of.ended(uri);
    });
    this.running.set(uri, { version, cancellation, done });
    return done;
  }

  private async evaluate(uri: string, version: number, cancellation: { cancelled: boolean }): Promise<void> {
    try {
      this.of.started(uri);
      const document = await this.of.document(uri);
      if (document === null || cancellation.cancelled) return;
      const evaluated = await document.project.engine.evaluate(document.path, document.text, cancellation);
      if (cancellation.cancelled) return;
      const snapshot = await this.of.checked(document, evaluated);
      if (cancellation.cancelled || this.of.versionOf(uri) !== version) return;
      this.publish(document, snapshot);
    } catch (error) {
      if (!(error instanceof Cancelled)) this.of.failed(uri, error);
    }
  }

  private publish(document: GlossDocument, snapshot: Snapshot): void {
    const revision = (this.revisions.get(document.uri) ?? 0) + 1;
    this.revisions.set(document.uri, revision);
    const results: Results = {
      snapshot,
      version: document.version,
      revision,
      gloss: document,
      method: document.method,
    };
    this.last.set(document.uri, results);
    this.of.finished(document.uri, results);
  }
}
