/** A run of equal values at the top or bottom of a signal. */
export interface EqualExtremes {
  readonly value: number;
  /** Rows `first` to `first + count - 1`. */
  readonly first: number;
  readonly count: number;
  readonly at: 'maximum' | 'minimum';
}

/** Fewer equal values than this are chance. */
const least = 5;

/**
 * Rule A09: five or more equal values in a row that are the largest or smallest of the signal: an amplifier or detector
 * at its limit, which it reaches and leaves on a slope. A signal that is written in coarse steps has equal neighbours
 * everywhere: there the run must be three times as long as any other. Null: none.
 */
export function equalExtremes(values: Float64Array): EqualExtremes | null {
  let top = -Infinity;
  let bottom = Infinity;
  for (const value of values) {
    if (value > top) top = value;
    if (value < bottom) bottom = value;
  }
  if (!(top > bottom)) return null;
  let best: EqualExtremes | null = null;
  let longestOther = 1;
  for (let i = 0; i < values.length;) {
    let end = i + 1;
    while (end < values.length && values[end] === values[i]) end++;
    const count = end - i;
    const isExtreme = values[i] === top || values[i] === bottom;
    if (isExtreme && isClipped(values, i, end) && count > (best?.count ?? 0)) {
      best = { value: values[i], first: i, count, at: values[i] === top ? 'maximum' : 'minimum' };
    } else if (!isExtreme && count > longestOther) longestOther = count;
    i = end;
  }
  if (best === null || best.count < least || best.count <= 3 * (longestOther - 1)) return null;
  return best;
}

/**
 * Entered and left on a slope: on both sides the second sample is further from the limit than the first. A record that
 * begins or ends at its extreme rests there.
 */
function isClipped(values: Float64Array, from: number, to: number): boolean {
  if (from < 2 || to + 1 >= values.length) return false;
  const limit = values[from];
  const isSlope = (beside: number, beyond: number): boolean =>
    Math.abs(limit - beside) > 0 && Math.abs(limit - beyond) > 1.3 * Math.abs(limit - beside);
  return isSlope(values[from - 1], values[from - 2]) && isSlope(values[to], values[to + 1]);
}
