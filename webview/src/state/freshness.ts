import type { Freshness } from '../../../server/src/protocol/view';
import type { Timers } from './timers';

/** How long a computation may take before it is worth a word, ms. */
export const quietComputing = 200;

export interface FreshnessWords {
  /** Takes the freshness of a new state; shows it at once, or `computing` only after it has lasted. */
  take(freshness: Freshness): void;
}

/** Computing that ends soon is never shown, so that the head line keeps still while one types. */
export function freshnessWords(timers: Timers, show: (freshness: Freshness) => void): FreshnessWords {
  let cancel: (() => void) | null = null;
  let isShown = false;
  return {
    take(freshness) {
      if (freshness.state !== 'computing') {
        cancel?.();
        cancel = null;
        isShown = false;
        show(freshness);
      } else if (isShown) {
        show(freshness);
      } else {
        // A second computing state must not put the word off for ever.
        cancel ??= timers.after(quietComputing, () => {
          cancel = null;
          isShown = true;
          show(freshness);
        });
      }
    },
  };
}
