/** One question at a time: while one is out, only the latest of the next ones is kept. */
export interface SingleFlight<Q> {
  ask(question: Q): void;
  /** Forgets a waiting question and whatever the one in flight will bring. */
  drop(): void;
  readonly busy: boolean;
}

/**
 * `send` brings the answer; `take` gets it with its question, unless `drop` was called in between. A question asked while
 * one is out replaces the waiting one, or is `joined` with it (steps of arrow keys add up).
 */
export function singleFlight<Q, A>(
  send: (question: Q) => Promise<A>,
  take: (answer: A, question: Q) => void,
  joined: (waiting: Q, next: Q) => Q = (_waiting, next) => next,
): SingleFlight<Q> {
  let out = false;
  let waiting: Q | null = null;
  let era = 0;
  const start = (question: Q): void => {
    out = true;
    const mine = era;
    void send(question).then((answer) => {
      out = false;
      if (mine === era) take(answer, question);
      const next = waiting;
      waiting = null;
      if (next !== null) start(next);
    });
  };
  return {
    ask(question) {
      if (out) waiting = waiting === null ? question : joined(waiting, question);
      else start(question);
    },
    drop() {
      era++;
      waiting = null;
    },
    get busy() {
      return out;
    },
  };
}
