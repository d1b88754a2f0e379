import { parse } from '../../language/syntax/parse';
import type { GlossText } from '../workspace';
import { occurrencesIn, type Occurrence } from './occurrences';

/**
 * Whether a text reads the same after some places of a name are written anew: no line breaks, and every name stands where
 * it stood. `12 mg/n` with `K` for `n` does not: `mg/K` is a unit. Gives the first place that is read otherwise.
 */
export function readsOtherwise(text: GlossText, places: readonly Occurrence[], newName: string): Occurrence | null {
  const edited = [...places].sort((a, b) => a.span.start - b.span.start);
  const written = edited.reduceRight(
    (all, { span }) => all.slice(0, span.start) + newName + all.slice(span.end),
    text.tree.text,
  );
  const after = parse(written);
  const names = new Map(occurrencesIn(after).map((o) => [o.span.start, o.name]));
  const before = occurrencesIn(text.tree);
  const moved = (offset: number): number =>
    edited
      .filter(({ span }) => span.start < offset)
      .reduce((at, { span }) => at + newName.length - span.end + span.start, offset);
  const isEdited = (o: Occurrence): boolean => edited.some(({ span }) => span.start === o.span.start);
  const lost = before.find((o) => names.get(moved(o.span.start)) !== (isEdited(o) ? newName : o.name));
  if (lost !== undefined) return isEdited(lost) ? lost : (edited[0] ?? null);
  const same = names.size === before.length && after.findings.length === text.tree.findings.length;
  return same ? null : (edited[0] ?? null);
}
