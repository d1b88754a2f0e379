import { make, setAttribute, setText } from '../dom';

/** A word that is on or off. */
export function toggle(press: (on: boolean) => void): HTMLButtonElement {
  const button = make('button', { class: 'toggle', attributes: { type: 'button', 'aria-pressed': 'false' } });
  button.addEventListener('click', () => press(button.getAttribute('aria-pressed') !== 'true'));
  return button;
}

export function setToggle(button: HTMLElement, text: string, on: boolean): void {
  setText(button, text);
  setAttribute(button, 'aria-pressed', String(on));
}
