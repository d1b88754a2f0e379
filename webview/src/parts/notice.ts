import { make, setText } from '../dom';
import type { Timers } from '../state/timers';

export interface Notice {
  readonly element: HTMLElement;
  tell(text: string, kind: 'done' | 'alert'): void;
}

/** One line of words beside what was done; it goes by itself, a failure stays longer. */
export function notice(timers: Timers): Notice {
  const done = make('div', { class: 'notice', attributes: { role: 'status' } });
  const alert = make('div', { class: 'notice alert', attributes: { role: 'alert' } });
  const element = make('div', { class: 'notices', children: [done, alert] });
  let cancel: (() => void) | null = null;
  const clear = (): void => {
    setText(done, '');
    setText(alert, '');
  };
  return {
    element,
    tell(text, kind) {
      cancel?.();
      clear();
      setText(kind === 'alert' ? alert : done, text);
      cancel = timers.after(kind === 'alert' ? 12_000 : 5000, clear);
    },
  };
}

/** Speech for the cursor: polite, and only when it has come to rest, not with every sample passed. */
export function speech(timers: Timers): {
  readonly element: HTMLElement;
  say(text: string): void;
  now(text: string): void;
} {
  const element = make('div', { class: 'unseen', attributes: { 'aria-live': 'polite', 'aria-atomic': 'true' } });
  let cancel: (() => void) | null = null;
  return {
    element,
    say(text) {
      cancel?.();
      cancel = timers.after(180, () => setText(element, text));
    },
    now(text) {
      cancel?.();
      setText(element, text);
    },
  };
}
