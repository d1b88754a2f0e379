import type { Span } from '../../base/span';
import { normalName } from '../../language/syntax/characters';
import type { StatementNode, Tree } from '../../language/tree';
import type { Abilities } from '../abilities';
import type { Cursor } from '../cursor';
import type { LineToken } from '../lineTokens';
import type { GlossDocument, Results, Workspace } from '../workspace';

/** What the offers of one completion are made from. */
export interface CompletionContext {
  readonly workspace: Workspace;
  readonly document: GlossDocument;
  readonly cursor: Cursor;
  /** The last finished results, also of an older text: their names and values help all the same. */
  readonly results: Results | null;
  readonly abilities: Abilities;
}

/** A name that a gloss or its method defines. */
export interface KnownName {
  readonly name: string;
  /** `step`, `let`, `given`, `require` …; of a part of a sum that of the sum. */
  readonly kind: string;
  readonly file: 'gloss' | 'method';
}

/** The names of a gloss and of its method, also of lines that are not complete; each once. */
export function knownNames({ tree, method }: GlossDocument): readonly KnownName[] {
  const names = new Map<string, KnownName>();
  const add = (name: string, kind: string, file: KnownName['file']): void => {
    if (!names.has(name)) names.set(name, { name, kind, file });
  };
  for (const [of, file] of [
    [tree, 'gloss'],
    [method?.tree ?? null, 'method'],
  ] as const) {
    for (const node of of?.statements ?? []) {
      if (node.name === null) continue;
      const kind = kindOf(of!, node);
      add(node.name, kind, file);
      for (let i = 0; node.tokens.has(`sum/${i}`); i += 1) add(words(of!, node.tokens.get(`sum/${i}`)!), kind, file);
    }
  }
  return [...names.values()];
}

/** The kind of a statement, told by its keyword where the rest of it is broken. */
export function kindOf(tree: Tree, node: StatementNode): string {
  if (node.statement !== null) return node.statement.kind;
  const keyword = node.tokens.get('keyword');
  return keyword === undefined ? '' : words(tree, keyword).replace(/^override\s+/, '');
}

function words(tree: Tree, span: Span): string {
  return normalName(tree.text.slice(span.start, span.end));
}

/** `heating 1`: those of the run where it is known, else the first of each. */
export function segmentNames(results: Results | null): readonly string[] {
  const found = results?.snapshot.run?.segments.map((s) => s.name) ?? [];
  return found.length > 0 ? found : ['heating 1', 'cooling 1', 'hold 1'];
}

/** What is replaced when several words are offered as one: from the first of these tokens to the cursor. */
export function from(cursor: Cursor, first: LineToken | undefined): Span {
  return { start: first?.span.start ?? cursor.typed.start, end: cursor.typed.end };
}

export function isWord(token: LineToken | undefined, word: string): boolean {
  return token?.kind === 'word' && token.text === word;
}

export function isSign(token: LineToken | undefined, sign: string): boolean {
  return token?.kind === 'sign' && token.text === sign;
}

/** Where the last token of a kind stands; -1: nowhere. */
export function lastIndex(tokens: readonly LineToken[], test: (token: LineToken) => boolean): number {
  for (let i = tokens.length - 1; i >= 0; i -= 1) if (test(tokens[i]!)) return i;
  return -1;
}
