/** A rule of a TextMate grammar. */
export interface Pattern {
  readonly name?: string;
  readonly contentName?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly include?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}

export type Captures = Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly Pattern[] }>>;

/** A rule of the repository. */
export function include(name: string): Pattern {
  return { include: `#${name}` };
}

export function match(name: string, pattern: string): Pattern {
  return { name: scope(name), match: pattern };
}

/** Scopes of the parts of a match, by the number of their group. */
export function captures(names: Readonly<Record<number, string | null>>): Captures {
  const named = Object.entries(names).flatMap(([group, name]) =>
    name === null ? [] : [[group, { name: scope(name) }]],
  );
  return Object.fromEntries(named) as Captures;
}

export function scope(name: string): string {
  return `${name}.gloss`;
}

/** Letters that mean nothing but themselves in a pattern. */
export function literal(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
}
