import type { Curve } from './curve';
import { fitPolynomial, type PolynomialFit } from './polynomialFit';
import { samplesAround, type SampleRange } from './range';

/**
 * The local polynomial at `centre`: least squares over the samples within the full width `width`, on any grid (on an
 * even one its derivatives are those of Savitzky and Golay, Anal. Chem. 36 (1964) 1627, doi 10.1021/ac60214a047).
 * Where the width holds fewer than `degree + 2` samples it is widened to the nearest so many.
 */
export function localPolynomial(
  curve: Curve,
  centre: number,
  width: number,
  degree: number,
  within?: SampleRange,
): PolynomialFit {
  const { first, last } = samplesAround(curve.x, centre, width, degree + 2, within);
  return fitPolynomial(curve.x, curve.y, first, last, degree);
}
