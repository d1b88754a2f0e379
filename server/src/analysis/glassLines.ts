import type { Line } from './baseline';
import type { Curve, Window } from './curve';
import { fitPolynomial } from './polynomialFit';
import { firstAfter, firstAtOrAfter, samplesIn, type SampleRange } from './range';
import { fittedLine } from './straightBaseline';

/** The straight lines before and after a glass transition. */
export interface GlassLines {
  readonly before: Line;
  readonly after: Line;
  readonly rangeBefore: SampleRange;
  readonly rangeAfter: SampleRange;
  /** 1: the second line lies higher in the middle of the window. */
  readonly direction: 1 | -1;
}

/**
 * Straight lines of least squares over `spanFrom` and `spanTo` (s) inside the ends of the window, each at most a third of
 * it. Null where one of them holds fewer than three samples.
 */
export function glassLines(curve: Curve, { from, to }: Window, spanFrom: number, spanTo: number): GlassLines | null {
  const { x, y } = curve;
  const { first, last } = samplesIn(x, { from, to });
  const third = (to - from) / 3;
  const rangeBefore = { first, last: firstAfter(x, from + Math.min(spanFrom, third), first, last) };
  const rangeAfter = { first: firstAtOrAfter(x, to - Math.min(spanTo, third), first, last), last };
  if (rangeBefore.last - rangeBefore.first < 3 || rangeAfter.last - rangeAfter.first < 3) return null;
  const line = (range: SampleRange): Line =>
    fittedLine(fitPolynomial(x, y, range.first, range.last, 1), x[range.first]);
  const before = line(rangeBefore);
  const after = line(rangeAfter);
  const middle = (from + to) / 2;
  return { before, after, rangeBefore, rangeAfter, direction: after.at(middle) < before.at(middle) ? -1 : 1 };
}
