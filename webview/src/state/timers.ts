/** Timers of the outside, injected so that a test turns the clock. */
export interface Timers {
  /** Calls back once after so many ms; the returned function takes it back. */
  after(ms: number, work: () => void): () => void;
}

/** Runs `work` once, `ms` after the last call; `now` runs a waiting one at once. */
export interface Debounced {
  later(): void;
  now(): void;
}

export function debounced(timers: Timers, ms: number, work: () => void): Debounced {
  let cancel: (() => void) | null = null;
  const run = (): void => {
    cancel = null;
    work();
  };
  return {
    later() {
      cancel?.();
      cancel = timers.after(ms, run);
    },
    now() {
      if (cancel === null) return;
      cancel();
      run();
    },
  };
}
