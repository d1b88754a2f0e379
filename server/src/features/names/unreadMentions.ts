import type { Span } from '../../base/span';
import { matchAt, nameAt, normalName, textAt } from '../../language/syntax/characters';
import { parseLines } from '../../language/syntax/parse';
import type { GlossText } from '../workspace';
import { occurrencesIn } from './occurrences';

/**
 * Words equal to a name in lines that cannot be read, where nobody knows whether they are that name: texts and comments
 * apart, and what was read before the line broke.
 */
export function unreadMentions({ tree }: GlossText, name: string): readonly Span[] {
  if (tree.findings.length === 0) return [];
  const known = new Set(occurrencesIn(tree).map(({ span }) => span.start));
  return parseLines(tree.text).lines.flatMap(({ line, as }) =>
    as === 'untouched' ? wordsOf(tree.text, line.first, line.end, name).filter(({ start }) => !known.has(start)) : [],
  );
}

function wordsOf(text: string, from: number, to: number, name: string): Span[] {
  const found: Span[] = [];
  for (let at = from; at < to;) {
    const word = matchAt(nameAt, text, at) ?? matchAt(textAt, text, at);
    const end = at + (word?.[0].length ?? 1);
    if (word !== null && normalName(word[0]) === name) found.push({ start: at, end });
    at = end;
  }
  return found;
}
