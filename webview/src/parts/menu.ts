import { make, px } from '../dom';

export type MenuEntry =
  | { readonly kind: 'do'; readonly text: string; readonly run: () => void; readonly off?: boolean }
  | {
      readonly kind: 'check' | 'one';
      readonly text: string;
      readonly on: boolean;
      readonly run: () => void;
      readonly off?: boolean;
    }
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'words'; readonly text: string };

/**
 * A button that opens a menu below it (menu button pattern of the ARIA authoring practices): arrows move, Enter and
 * Space choose, Escape and Tab close, and the focus returns to the button. Entries are asked for at each opening.
 */
export function menuButton(text: string, name: string, entries: () => readonly MenuEntry[]): HTMLButtonElement {
  const button = make('button', {
    class: 'menu-button',
    text,
    attributes: { type: 'button', 'aria-haspopup': 'menu', 'aria-expanded': 'false', 'aria-label': name },
  });
  let close: (() => void) | null = null;
  button.addEventListener('click', () => {
    if (close !== null) close();
    else close = opened(button, name, entries, () => (close = null));
  });
  button.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowDown' || close !== null) return;
    event.preventDefault();
    button.click();
  });
  return button;
}

function opened(
  button: HTMLElement,
  name: string,
  entries: () => readonly MenuEntry[],
  onClosed: () => void,
): () => void {
  const menu = make('div', { class: 'menu', attributes: { role: 'menu', 'aria-label': name } });
  const close = (focus = true): void => {
    menu.remove();
    button.setAttribute('aria-expanded', 'false');
    document.removeEventListener('pointerdown', outside, true);
    window.removeEventListener('resize', shut);
    onClosed();
    if (focus) button.focus();
  };
  const shut = (): void => close(false);
  const outside = (event: Event): void => {
    if (!menu.contains(event.target as Node) && !button.contains(event.target as Node)) close(false);
  };
  const fill = (): void => {
    const at = focusable(menu).indexOf(document.activeElement as HTMLElement);
    menu.replaceChildren(...entries().map((entry) => entryElement(entry, close, fill)));
    focusable(menu)[Math.max(0, at)]?.focus();
  };
  menu.addEventListener('keydown', (event) => moves(event, menu, close));
  // Where focus goes elsewhere (a click into another frame), the menu has no business staying.
  menu.addEventListener('focusout', (event) => {
    if (event.relatedTarget instanceof Node && !menu.contains(event.relatedTarget) && event.relatedTarget !== button) {
      close(false);
    }
  });
  document.addEventListener('pointerdown', outside, true);
  window.addEventListener('resize', shut);
  button.setAttribute('aria-expanded', 'true');
  button.after(menu);
  fill();
  place(menu, button);
  return close;
}

function entryElement(entry: MenuEntry, close: () => void, refill: () => void): HTMLElement {
  if (entry.kind === 'title')
    return make('div', { class: 'menu-title', text: entry.text, attributes: { role: 'presentation' } });
  if (entry.kind === 'words') {
    return make('div', {
      class: 'menu-words',
      text: entry.text,
      attributes: { role: 'menuitem', tabindex: '-1', 'aria-disabled': 'true' },
    });
  }
  const role = entry.kind === 'do' ? 'menuitem' : entry.kind === 'check' ? 'menuitemcheckbox' : 'menuitemradio';
  const item = make('div', { class: 'menu-item', attributes: { role, tabindex: '-1' } });
  if (entry.kind !== 'do') item.setAttribute('aria-checked', String(entry.on));
  if (entry.off === true) item.setAttribute('aria-disabled', 'true');
  item.append(
    make('span', { class: 'menu-sign', attributes: { 'aria-hidden': 'true' } }),
    make('span', { text: entry.text }),
  );
  item.addEventListener('click', () => {
    if (entry.off === true) return;
    if (entry.kind === 'do') close();
    entry.run();
    if (entry.kind !== 'do') refill();
  });
  return item;
}

function moves(event: KeyboardEvent, menu: HTMLElement, close: (focus?: boolean) => void): void {
  const items = focusable(menu);
  const at = items.indexOf(document.activeElement as HTMLElement);
  const to: Readonly<Record<string, number>> = {
    ArrowDown: (at + 1) % items.length,
    ArrowUp: (at - 1 + items.length) % items.length,
    Home: 0,
    End: items.length - 1,
  };
  event.stopPropagation();
  if (event.key === 'Tab') close(true);
  else if (event.key === 'Escape') close();
  else if (event.key === 'Enter' || event.key === ' ') items[at]?.click();
  else if (event.key in to) items[to[event.key]]?.focus();
  else return;
  if (event.key !== 'Tab') event.preventDefault();
}

function focusable(menu: HTMLElement): HTMLElement[] {
  return [...menu.querySelectorAll<HTMLElement>('[role^="menuitem"]')];
}

/** Below the button, inside the window. */
function place(menu: HTMLElement, button: HTMLElement): void {
  const at = button.getBoundingClientRect();
  const { width, height } = menu.getBoundingClientRect();
  const left = Math.max(4, Math.min(at.left, document.body.getBoundingClientRect().right - width - 4));
  const below = at.bottom + 2;
  const top = below + height <= window.innerHeight - 4 ? below : Math.max(4, at.top - height - 2);
  menu.style.left = px(left);
  menu.style.top = px(top);
}
