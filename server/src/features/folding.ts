import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver-types';
import { lineKinds, type LineKind } from './lineKinds';
import type { GlossText } from './workspace';

/**
 * What can be folded: a statement with its clauses, comments of several lines, and a group of statements below a comment
 * line or a head without clauses, up to the next empty line. At most `limit`, statements before the others.
 */
export function folding(text: GlossText, limit = Infinity): FoldingRange[] {
  const lines = lineKinds(text);
  const statements = text.tree.statements.flatMap((node) => {
    const first = text.positions.lineOf(node.span.start);
    return fold(first, text.positions.lineOf(node.span.end));
  });
  const comments = stretches(lines, (kind) => kind === 'comment').flatMap(([first, last]) =>
    fold(first, last, FoldingRangeKind.Comment),
  );
  const taken = new Set([...statements, ...comments].map(({ startLine }) => startLine));
  // Two folds of one line could not be told apart.
  const groups = stretches(lines, (kind) => kind !== 'blank')
    .filter(([first, last]) => !taken.has(first) && lines.slice(first + 1, last + 1).some((kind) => kind === 'head'))
    .flatMap(([first, last]) => fold(first, last, FoldingRangeKind.Region));
  return [...statements, ...comments, ...groups].slice(0, limit).sort((a, b) => a.startLine - b.startLine);
}

function fold(startLine: number, endLine: number, kind?: FoldingRangeKind): FoldingRange[] {
  if (endLine <= startLine) return [];
  return [kind === undefined ? { startLine, endLine } : { startLine, endLine, kind }];
}

function stretches(lines: readonly LineKind[], belongs: (kind: LineKind) => boolean): [number, number][] {
  const found: [number, number][] = [];
  let first: number | null = null;
  for (let i = 0; i <= lines.length; i += 1) {
    const inside = i < lines.length && belongs(lines[i]);
    if (inside) first ??= i;
    else if (first !== null) {
      found.push([first, i - 1]);
      first = null;
    }
  }
  return found;
}
