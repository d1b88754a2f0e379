import { fitPolynomial } from './polynomialFit';

/**
 * Slope at `centre` of the cubic through the samples `first` to `last` (exclusive), by sums of powers: the fast form of
 * `localPolynomial(…, 3).at(centre, 1)` for scanning, without allocation. The abscissa is scaled to about -1..1, where
 * the normal equations of a cubic lose no more than three digits.
 */
export function localSlope(x: Float64Array, y: Float64Array, first: number, last: number, centre: number): number {
  const n = last - first;
  if (n < 5) return fitPolynomial(x, y, first, last, Math.min(3, n - 1)).at(centre, 1);
  const scale = Math.max(centre - x[first], x[last - 1] - centre);
  const origin = y[(first + last) >> 1];
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let s5 = 0;
  let s6 = 0;
  let t0 = 0;
  let t1 = 0;
  let t2 = 0;
  let t3 = 0;
  for (let i = first; i < last; i++) {
    const u = (x[i] - centre) / scale;
    const v = y[i] - origin;
    const uu = u * u;
    const uuu = uu * u;
    s1 += u;
    s2 += uu;
    s3 += uuu;
    s4 += uu * uu;
    s5 += uu * uuu;
    s6 += uuu * uuu;
    t0 += v;
    t1 += u * v;
    t2 += uu * v;
    t3 += uuu * v;
  }
  // Eliminates the constant, then the square, then the cube; what is left is the slope.
  const a11 = s2 - (s1 * s1) / n;
  const a12 = s3 - (s1 * s2) / n;
  const a13 = s4 - (s1 * s3) / n;
  const a22 = s4 - (s2 * s2) / n;
  const a23 = s5 - (s2 * s3) / n;
  const a33 = s6 - (s3 * s3) / n;
  const b1 = t1 - (s1 * t0) / n;
  const b2 = t2 - (s2 * t0) / n;
  const b3 = t3 - (s3 * t0) / n;
  const c11 = a11 - (a12 * a12) / a22;
  const c13 = a13 - (a12 * a23) / a22;
  const c33 = a33 - (a23 * a23) / a22;
  const d1 = b1 - (a12 * b2) / a22;
  const d3 = b3 - (a23 * b2) / a22;
  return (d1 - (c13 * d3) / c33) / (c11 - (c13 * c13) / c33) / scale;
}
