import { splitLines, type SourceLine } from '../language/syntax/lines';
import type { GlossText } from './workspace';

export type LineKind = SourceLine['kind'];

/**
 * What each line of the protocol is. A lone CR ends a line there and is a blank in the language: what it cuts off belongs
 * to the kind of the whole.
 */
export function lineKinds({ tree, positions }: GlossText): readonly LineKind[] {
  const kinds: LineKind[] = Array.from({ length: positions.lines }, () => 'blank');
  for (const line of splitLines(tree.text)) {
    const last = positions.lineOf(line.lineEnd);
    for (let i = positions.lineOf(line.start); i <= last; i += 1) kinds[i] = line.kind;
  }
  return kinds;
}
