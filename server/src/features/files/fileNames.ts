import type { Span } from '../../base/span';
import type { StatementNode, Tree } from '../../language/tree';

/** A file that a statement names. */
export interface FileName {
  readonly node: StatementNode;
  readonly file: string;
  /** With its quotation marks. */
  readonly span: Span;
  /** Between them. */
  readonly inner: Span;
}

/** The files a text names (`run`, `join`, `blank`, `method`, `columns of`, `reading of`), also where a line breaks behind. */
export function fileNamesIn(tree: Tree): readonly FileName[] {
  return tree.statements.flatMap((node) => {
    const span = node.tokens.get('file');
    if (span === undefined) return [];
    const inner = { start: span.start + 1, end: span.end - 1 };
    const file = tree.text
      .slice(inner.start, inner.end)
      .replace(/\\(.)/g, (_, c: string) => (c === 'n' ? '\n' : c === 't' ? '\t' : c));
    return [{ node, file, span, inner }];
  });
}

export function fileNameAt(tree: Tree, offset: number): FileName | null {
  return fileNamesIn(tree).find(({ span }) => span.start <= offset && offset <= span.end) ?? null;
}
