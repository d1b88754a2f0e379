import type { Curve, Window } from './curve';
import { localPolynomial } from './localPolynomial';
import type { PolynomialFit } from './polynomialFit';
import { samplesAround } from './range';
import { steepest } from './steepest';

/**
 * The local polynomial for flanks and tops of peaks: of fifth degree where the width holds enough samples, because at
 * half of the half-height width a cubic reads the flank of a Gaussian peak 1.2 % too flat (five terms of its Taylor
 * series), more than noise hides; of third degree on sparse data.
 */
export function peakPolynomial(curve: Curve, centre: number, width: number): PolynomialFit {
  const { first, last } = samplesAround(curve.x, centre, width, 5);
  return localPolynomial(curve, centre, width, last - first >= 10 ? 5 : 3);
}

/** The tangent at the steepest point of a flank. */
export interface HeatTangent {
  /** The point of contact. */
  readonly time: number;
  readonly fit: PolynomialFit;
  readonly value: number;
  /** Of the total signal, unit of y per s. */
  readonly slope: number;
}

/**
 * The tangent where the curve rises (`direction` 1) or falls (-1) fastest inside `flank`: the point of contact as
 * `steepest` places it, ordinate and slope from the peak polynomial there. That an error in the point of contact shifts
 * the tangent only in second order is why the two may be read with different fits.
 */
export function heatTangent(curve: Curve, flank: Window, direction: 1 | -1, width: number): HeatTangent | null {
  if (!(flank.to > flank.from)) return null;
  const smooth = Math.max(width, leastWidth(curve, flank));
  const place = steepest(curve, flank, direction > 0 ? 'rising' : 'falling', { smooth, noise: null });
  if (place === null) return null;
  const time = Math.min(Math.max(place.time.value, flank.from), flank.to);
  const fit = peakPolynomial(curve, time, width);
  const slope = fit.at(time, 1);
  if (!(direction * slope > 0)) return null;
  return { time, fit, value: fit.at(time), slope };
}

/** Seven neighbouring samples: what a local quartic needs. */
function leastWidth({ x }: Curve, { from, to }: Window): number {
  const { first, last } = samplesAround(x, (from + to) / 2, 0, 7);
  return x[last - 1] - x[first];
}
