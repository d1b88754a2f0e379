import type { Span } from '../base/span';
import type { StatementNode, Tree } from '../language/tree';

/** A clause as it stands under its head. */
export interface ClausePlace {
  readonly word: string;
  /** Name of its token, `atmosphere#2`. */
  readonly token: string;
  readonly span: Span;
  /** What stands behind the word; null: nothing. */
  readonly value: Span | null;
}

/** The clauses of a statement that were read, in the order of the text. */
export function clausesOf(tree: Tree, node: StatementNode): readonly ClausePlace[] {
  const head = node.tokens.get('head')?.end ?? node.span.start;
  return [...node.tokens]
    .filter(([token, span]) => span.start > head && !/[./]/.test(token))
    .map(([token, span]) => {
      const value = node.tokens.get(`${token}.value`) ?? null;
      return { word: tree.text.slice(span.start, value?.start ?? span.end).trimEnd(), token, span, value };
    })
    .sort((a, b) => a.span.start - b.span.start);
}
