import { make, px } from '../dom';
import { say } from '../words';

/**
 * Where a moved edge of the method is written: an override in the run's own gloss (first, so that Enter takes it), or the
 * method, for every run that names it. null: nowhere.
 */
export function intoChoice(
  host: HTMLElement,
  left: number,
  top: number,
  runs: number,
): Promise<'gloss' | 'method' | null> {
  return new Promise((resolve) => {
    const before = document.activeElement;
    const done = (into: 'gloss' | 'method' | null): void => {
      box.remove();
      if (before instanceof HTMLElement) before.focus();
      resolve(into);
    };
    const button = (text: string, into: 'gloss' | 'method' | null, title?: string): HTMLButtonElement =>
      make('button', { class: 'offer', text, title, attributes: { type: 'button' }, on: { click: () => done(into) } });
    const inMethod = runs > 1 ? say('edgeInMethodOf', runs) : say('edgeInMethod');
    const here = button(say('edgeHere'), 'gloss');
    const words = make('p', { text: say('edgeChoice') });
    const box = make('div', {
      class: 'choice-box',
      attributes: { role: 'dialog', 'aria-label': say('edgeChoice') },
      children: [words, here, button(inMethod, 'method', say('edgeInMethodHelp')), button(say('cancel'), null)],
    });
    box.addEventListener('keydown', (event) => {
      event.stopPropagation();
      if (event.key === 'Escape') done(null);
    });
    host.append(box);
    box.style.left = px(Math.max(4, Math.min(left + 8, host.clientWidth - box.offsetWidth - 4)));
    box.style.top = px(top);
    here.focus();
  });
}
