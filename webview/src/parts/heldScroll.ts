import type { Timers } from '../state/timers';

/** How long a place is held once it is reached, in ms: the editor places a page that it makes anew, too, and later. */
const patience = 1000;
const inputs = ['wheel', 'touchstart', 'pointerdown', 'pointermove', 'keydown'] as const;

export interface HeldScroll {
  /** Wanted as soon as there is a sheet. */
  to(top: number): void;
  /** The sheet was drawn, and may have another height. */
  drawn(): void;
  onScroll(scrolled: (top: number) => void): void;
}

/**
 * The scroll of the sheet. A place that is to be restored is held while the sheet grows to its height and against whoever
 * else scrolls, until a person does something or it has been held for a while. What is scrolled meanwhile is not told.
 */
export function heldScroll(timers: Timers): HeldScroll {
  const page = document.documentElement;
  let held: number | null = null;
  let isDrawn = false;
  let over: (() => void) | null = null;
  const letGo = (): void => {
    over?.();
    over = null;
    held = null;
    isDrawn = false;
  };
  const place = (): void => {
    if (held === null) return;
    const isThere = (): boolean => Math.round(page.scrollTop) === held;
    if (!isThere()) page.scrollTop = held;
    if (isThere()) over ??= timers.after(patience, letGo);
  };
  for (const input of inputs) {
    window.addEventListener(input, () => isDrawn && letGo(), { passive: true, capture: true });
  }
  return {
    to(top) {
      letGo();
      held = top;
    },
    drawn() {
      isDrawn = held !== null;
      place();
    },
    onScroll(scrolled) {
      window.addEventListener('scroll', () => (held === null ? scrolled(Math.round(page.scrollTop)) : place()), {
        passive: true,
      });
    },
  };
}
