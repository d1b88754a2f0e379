import type { Position, SelectionRange } from 'vscode-languageserver-types';
import type { Span } from '../base/span';
import { lineKinds } from './lineKinds';
import { statementAt, tokensAt } from './statements';
import type { GlossText } from './workspace';

const word = /[\p{L}\p{M}\p{Nd}_]+(?:\.\d+)?/gu;

/**
 * Ever larger stretches about each position: word, token, value of the clause, clause or head, statement, statements
 * without an empty line between them, text.
 */
export function selectionRanges(text: GlossText, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => {
    const offset = text.positions.offset(position);
    const all = { start: 0, end: text.tree.text.length };
    const spans = [
      ...wordAt(text, offset),
      ...statementSpans(text, offset),
      lineSpan(text, position.line),
      block(text, position.line),
      all,
    ];
    return chain(text, spans, offset);
  });
}

function statementSpans({ tree }: GlossText, offset: number): Span[] {
  const node = statementAt(tree, offset);
  return node === null ? [] : [...tokensAt(node, offset).map(({ span }) => span), node.span];
}

function wordAt(text: GlossText, offset: number): Span[] {
  const line = text.positions.lineSpan(text.positions.lineOf(offset));
  for (const found of text.tree.text.slice(line.start, line.end).matchAll(word)) {
    const start = line.start + found.index;
    const span = { start, end: start + found[0].length };
    if (span.start <= offset && offset <= span.end) return [span];
  }
  return [];
}

/** The line without blanks at its ends. */
function lineSpan(text: GlossText, line: number): Span {
  const { start, end } = text.positions.lineSpan(line);
  const written = text.tree.text.slice(start, end);
  const from = start + written.length - written.trimStart().length;
  return { start: Math.min(from, end), end: Math.max(from, start + written.trimEnd().length) };
}

function block(text: GlossText, line: number): Span {
  const kinds = lineKinds(text);
  let first = Math.min(line, kinds.length - 1);
  let last = first;
  while (first > 0 && kinds[first] !== 'blank' && kinds[first - 1] !== 'blank') first -= 1;
  while (last + 1 < kinds.length && kinds[last] !== 'blank' && kinds[last + 1] !== 'blank') last += 1;
  return { start: text.positions.lineSpan(first).start, end: text.positions.lineSpan(last).end };
}

/** The spans that hold the offset and each other, from the smallest to the largest. */
function chain(text: GlossText, spans: readonly Span[], offset: number): SelectionRange {
  const sorted = spans
    .filter(({ start, end }) => start <= offset && offset <= end)
    .sort((a, b) => a.end - a.start - (b.end - b.start));
  const nested: Span[] = [];
  for (const span of sorted) {
    const last = nested.at(-1);
    const holds = last === undefined || (span.start <= last.start && last.end <= span.end);
    const larger = last === undefined || span.end - span.start > last.end - last.start;
    if (holds && larger) nested.push(span);
  }
  return nested.reduceRight<SelectionRange | undefined>(
    (parent, span) => ({ range: text.positions.range(span), ...(parent === undefined ? {} : { parent }) }),
    undefined,
  )!;
}
