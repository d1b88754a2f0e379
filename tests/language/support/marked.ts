import type { Span } from '../../../server/src/base/span';

/** A text with marked places: `«` and `»` are taken out and their places are given in the order they close. */
export interface Marked {
  readonly text: string;
  readonly spans: readonly Span[];
}

export function marked(fixture: string): Marked {
  const spans: Span[] = [];
  const open: number[] = [];
  let text = '';
  for (const character of fixture) {
    if (character === '«') open.push(text.length);
    else if (character === '»') spans.push({ start: open.pop()!, end: text.length });
    else text += character;
  }
  if (open.length > 0) throw new Error('a mark is not closed');
  return { text, spans };
}
