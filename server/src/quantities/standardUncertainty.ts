import { mergedParts } from './parts';
import type { Uncertain } from './uncertain';

/** Combined standard uncertainty, in the unit of the value: root of the sum of squares over inputs (JCGM 100, 5.1.2). */
export function standardUncertainty(x: Uncertain): number {
  return Math.sqrt(mergedParts(x.parts).reduce((sum, part) => sum + part.u * part.u, 0));
}

/** What each input contributes, |sensitivity × u|, merged by input, largest first, equal ones by name. */
export function contributions(x: Uncertain): readonly { readonly input: string; readonly u: number }[] {
  return mergedParts(x.parts)
    .map((part) => ({ input: part.input, u: Math.abs(part.u) }))
    .sort((p, q) => q.u - p.u || (p.input < q.input ? -1 : 1));
}
