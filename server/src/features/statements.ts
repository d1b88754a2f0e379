import type { Span } from '../base/span';
import type { Statement } from '../language/model';
import type { StatementNode, Tree } from '../language/tree';

/** The statement whose lines hold the offset; null between statements. */
export function statementAt(tree: Tree, offset: number): StatementNode | null {
  return tree.statements.find((s) => s.span.start <= offset && offset <= s.span.end) ?? null;
}

/** The same, and behind a statement in its last line (a comment, blanks) still that statement. */
export function statementOfLine(tree: Tree, offset: number): StatementNode | null {
  const behind = ({ span }: StatementNode): boolean =>
    span.end < offset && !/[\r\n]/.test(tree.text.slice(span.end, offset));
  return statementAt(tree, offset) ?? tree.statements.find(behind) ?? null;
}

/** Token names of a statement that hold the offset, the narrowest first. */
export function tokensAt(node: StatementNode, offset: number): { readonly token: string; readonly span: Span }[] {
  return [...node.tokens]
    .filter(([, span]) => span.start <= offset && offset <= span.end)
    .map(([token, span]) => ({ token, span }))
    .sort((a, b) => a.span.end - a.span.start - (b.span.end - b.span.start));
}

/** The head of the first statement of a kind, else the start of the text. */
export function firstSpan(tree: Tree, kind: Statement['kind']): Span {
  const node = tree.statements.find((s) => s.statement?.kind === kind);
  return node?.tokens.get('head') ?? node?.span ?? { start: 0, end: 0 };
}
