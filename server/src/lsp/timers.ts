/** Injected, so that a thousand bursts of typing take seconds in a test. */
export interface Timers {
  /** Calls back once after so many milliseconds; the answer calls it off. */
  after(milliseconds: number, call: () => void): () => void;
}

export const realTimers: Timers = {
  after(milliseconds, call) {
    const timer = setTimeout(call, milliseconds);
    return () => clearTimeout(timer);
  },
};
