import { keyed, make, setText } from '../dom';
import type { Actions, Look } from '../look';
import { say } from '../words';

/** What could be done where there is nothing to draw: words and offers, each a button. */
export function empty(actions: Actions): { readonly element: HTMLElement; update(look: Look): void } {
  const title = make('h2');
  const words = make('p');
  const offers = make('div', { class: 'offers' });
  const element = make('section', { class: 'empty', children: [title, words, offers] });
  let known: Look['state']['offers'] = [];
  return {
    element,
    update({ state, freshness }) {
      known = state.offers;
      const isBare = state.lanes.length === 0;
      element.hidden = !isBare && known.length === 0;
      title.hidden = !isBare;
      words.hidden = !isBare;
      setText(title, say('emptyTitle'));
      setText(words, freshness.error?.message ?? freshness.text);
      keyed(
        offers,
        known.map((offer, at) => ({ ...offer, at })),
        ({ at }) => String(at),
        ({ at }) => {
          const button = make('button', { class: 'offer', attributes: { type: 'button' } });
          button.addEventListener('click', () => {
            const offer = known[at];
            if (offer !== undefined) actions.command(offer.command, offer.argument);
          });
          return button;
        },
        (button, offer) => setText(button, offer.text),
      );
    },
  };
}
