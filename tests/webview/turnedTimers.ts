import type { Timers } from '../../webview/src/state/timers';

/** A clock that a test turns. */
export class TurnedTimers implements Timers {
  private now = 0;
  private waiting: { at: number; work: () => void }[] = [];

  after(ms: number, work: () => void): () => void {
    const one = { at: this.now + ms, work };
    this.waiting.push(one);
    return () => {
      this.waiting = this.waiting.filter((other) => other !== one);
    };
  }

  /** Runs everything due in the next `ms`, in order of time. */
  turn(ms: number): void {
    const end = this.now + ms;
    for (;;) {
      const [next] = this.waiting.filter((w) => w.at <= end).sort((a, b) => a.at - b.at);
      if (next === undefined) break;
      this.waiting = this.waiting.filter((w) => w !== next);
      this.now = next.at;
      next.work();
    }
    this.now = end;
  }
}

/** Lets everything that was promised happen. */
export async function settled(): Promise<void> {
  for (let k = 0; k < 10; k++) await Promise.resolve();
}
