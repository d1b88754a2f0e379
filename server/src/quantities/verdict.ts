export type ConformityVerdict = 'met' | 'not met' | 'inconclusive';

/**
 * Conformity with closed limits from y and its expanded uncertainty U = k·u (JCGM 106:2012, 8.3.2 with guard bands of
 * one U on either side): met where y ± U lies within the limits, not met where it lies wholly outside, else
 * inconclusive. A limit of null is open. U of null (unknown) decides nothing. Units are the caller's, all the same.
 */
export function verdict(y: number, U: number | null, low: number | null, high: number | null): ConformityVerdict {
  if (U === null || !Number.isFinite(y) || !Number.isFinite(U)) return 'inconclusive';
  const a = low ?? -Infinity;
  const b = high ?? Infinity;
  // The limits belong to what they allow: rounding in the last bits must not push a value that lies on one over it.
  const slack = 1e-12 * Math.max(Math.abs(y), U, ...[low, high].map((limit) => Math.abs(limit ?? 0)));
  if (y - U >= a - slack && y + U <= b + slack) return 'met';
  return y + U < a - slack || y - U > b + slack ? 'not met' : 'inconclusive';
}
