import type { Span } from '../base/span';
import type { Tree } from '../language/tree';

/** One edit of the text of a gloss; nothing else of it changes. */
export interface LineEdit {
  readonly span: Span;
  readonly text: string;
}

/** Puts a statement in the place of the first of these, whose others go with their lines; without any, at the end. */
export function lineEdits({ text, statements }: Tree, replaced: readonly string[], statement: string): LineEdit[] {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const written = statement.replaceAll('\n', eol);
  const [first, ...others] = statements.filter(({ id }) => replaced.includes(id)).map(({ span }) => span);
  if (first === undefined) {
    const gap = text === '' || /[\r\n]$/.test(text) ? '' : eol;
    return [{ span: { start: text.length, end: text.length }, text: `${gap}${written}${eol}` }];
  }
  const removed = others.map((span) => ({ span: { start: span.start, end: nextLine(text, span.end) }, text: '' }));
  return [{ span: first, text: written }, ...removed];
}

export function withEdits(text: string, edits: readonly LineEdit[]): string {
  let made = '';
  let at = 0;
  for (const edit of edits) {
    made += text.slice(at, edit.span.start) + edit.text;
    at = edit.span.end;
  }
  return made + text.slice(at);
}

function nextLine(text: string, from: number): number {
  const end = /\r\n|\r|\n|$/g;
  end.lastIndex = from;
  const found = end.exec(text)!;
  return found.index + found[0].length;
}
