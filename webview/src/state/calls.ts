import type { FromView, ToView } from '../../../server/src/protocol/messages';
import type { Generation } from '../../../server/src/protocol/view';

type Asking = Extract<FromView, { readonly call: number }>;
type Answering = Extract<ToView, { readonly call: number }>;
type WithoutCall<M> = M extends { readonly call: number } ? Omit<M, 'call'> : never;

/** Questions with a number, and their answers by it. */
export interface Calls {
  /** The answer of the same number; it never fails: an answer of another kind counts as none (null). */
  ask(question: WithoutCall<Asking>): Promise<Answering>;
  /** True if the message was the answer to an open question. One that nobody waits for is dropped. */
  answer(message: ToView): boolean;
}

export function calls(post: (message: FromView) => void): Calls {
  const open = new Map<number, (answer: Answering) => void>();
  let last = 0;
  return {
    ask(question) {
      const call = ++last;
      return new Promise((resolve) => {
        open.set(call, resolve);
        post({ ...question, call } as Asking);
      });
    },
    answer(message) {
      if (!('call' in message)) return false;
      const resolve = open.get(message.call);
      open.delete(message.call);
      resolve?.(message);
      return resolve !== undefined;
    },
  };
}

/** Whether an answer belongs to the picture it was asked for: neither another gloss nor another revision of it. */
export function isOf(answer: { readonly generation: Generation } | null, generation: Generation): boolean {
  return (
    answer !== null && answer.generation.uri === generation.uri && answer.generation.revision === generation.revision
  );
}
