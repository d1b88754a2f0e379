import type { Position, Range, TextEdit } from 'vscode-languageserver-types';
import type { Span } from '../base/span';
import { formattedLines } from '../language/format';
import { opensClauses } from '../language/vocabulary/clauseHeads';
import type { GlossText } from './workspace';

/** The edits that bring a text into its usual form. They touch blanks and line ends only: numbers stay byte for byte. */
export function formatting(text: GlossText): TextEdit[] {
  return editsOf(text, () => true);
}

/** The same for the lines of a range; one that ends before the first character of a line does not reach it. */
export function rangeFormatting(text: GlossText, range: Range): TextEdit[] {
  const { start, end } = range;
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return editsOf(text, (from, to) => from <= last && to >= start.line);
}

function editsOf(text: GlossText, wanted: (firstLine: number, lastLine: number) => boolean): TextEdit[] {
  const { positions, tree } = text;
  const edits: TextEdit[] = [];
  const edit = (span: Span, newText: string): void => void edits.push({ range: positions.range(span), newText });
  for (const { start, lineEnd, next, written } of formattedLines(text.text)) {
    if (!wanted(positions.lineOf(start), positions.lineOf(lineEnd))) continue;
    if (written === null) {
      if (next > start) edit({ start, end: next }, '');
      continue;
    }
    const body = written.replace(/\r?\n$/, '');
    for (const { span, by } of blankEdits(tree.text.slice(start, lineEnd), body)) {
      edit({ start: start + span.start, end: start + span.end }, by);
    }
    if (next === lineEnd) edit({ start: lineEnd, end: lineEnd }, written.slice(body.length));
  }
  return edits;
}

const blanksAt = /[ \t\r\u00a0\u2007\u2009\u202f]*/y;

/** What changes one line into another that differs in its blanks. */
function blankEdits(before: string, after: string): { readonly span: Span; readonly by: string }[] {
  const edits: { span: Span; by: string }[] = [];
  let i = 0;
  let j = 0;
  while (i < before.length || j < after.length) {
    const old = blanks(before, i);
    const by = blanks(after, j);
    if (old !== by) edits.push({ span: { start: i, end: i + old.length }, by });
    i += old.length;
    j += by.length;
    if (before[i] !== after[j]) return [{ span: { start: 0, end: before.length }, by: after }];
    i += 1;
    j += 1;
  }
  return edits;
}

function blanks(text: string, at: number): string {
  blanksAt.lastIndex = at;
  return blanksAt.exec(text)![0];
}

/**
 * After a line end was typed: the new line is indented as a clause below a head that usually has some, and below a clause;
 * an indented line left empty ends the clauses.
 */
export function newlineFormatting(text: GlossText, position: Position): TextEdit[] {
  if (position.line === 0) return [];
  const above = text.positions.lineSpan(position.line - 1);
  const here = text.positions.lineSpan(position.line);
  const typed = text.tree.text.slice(above.start, above.end);
  const line = text.tree.text.slice(here.start, here.end);
  const indent = /^[ \t]*/.exec(line)![0];
  const edits: TextEdit[] = [];
  const put = (start: number, length: number, newText: string): void => {
    edits.push({ range: text.positions.range({ start, end: start + length }), newText });
  };
  if (typed !== '' && typed.trim() === '') {
    put(above.start, typed.length, '');
    if (indent !== '') put(here.start, indent.length, '');
  } else if (line === '' && (/^[ \t]+[^ \t#]/.test(typed) || opensClauses(typed))) {
    put(here.start, 0, '  ');
  }
  return edits;
}
