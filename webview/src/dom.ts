/** What an element is made of. Text goes in as text, never as markup: names and messages come from files. */
export interface Made {
  readonly class?: string;
  readonly text?: string;
  readonly title?: string;
  readonly attributes?: Readonly<Record<string, string>>;
  readonly children?: readonly Node[];
  readonly on?: Readonly<Partial<Record<keyof HTMLElementEventMap, (event: never) => void>>>;
}

export function make<K extends keyof HTMLElementTagNameMap>(tag: K, made: Made = {}): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (made.class !== undefined) element.className = made.class;
  if (made.text !== undefined) element.textContent = made.text;
  if (made.title !== undefined) element.title = made.title;
  for (const [name, value] of Object.entries(made.attributes ?? {})) element.setAttribute(name, value);
  for (const [name, handler] of Object.entries(made.on ?? {})) {
    element.addEventListener(name, handler as unknown as EventListener);
  }
  element.append(...(made.children ?? []));
  return element;
}

/** Sets text only where it differs: a rewritten node loses a selection and wakes screen readers. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

export function setAttribute(element: Element, name: string, value: string | null): void {
  if (value === null) element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/**
 * Brings the children of `parent` to one element an item, in order. An element stays with its key, so that focus and
 * scroll position outlive an update.
 */
export function keyed<T>(
  parent: Element,
  items: readonly T[],
  key: (item: T) => string,
  create: (item: T) => HTMLElement,
  update: (element: HTMLElement, item: T) => void,
): void {
  const old = new Map<string, HTMLElement>();
  for (const child of parent.children) {
    if (child instanceof HTMLElement && child.dataset.key !== undefined) old.set(child.dataset.key, child);
  }
  const wanted = items.map((item) => {
    const name = key(item);
    const element = old.get(name) ?? create(item);
    element.dataset.key = name;
    old.delete(name);
    update(element, item);
    return element;
  });
  for (const element of old.values()) element.remove();
  wanted.forEach((element, i) => {
    if (parent.children[i] !== element) parent.insertBefore(element, parent.children[i] ?? null);
  });
}

export function px(value: number): string {
  return `${Math.round(100 * value) / 100}px`;
}
