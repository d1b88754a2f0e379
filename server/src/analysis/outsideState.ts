import type { Line } from './baseline';
import type { Curve } from './curve';
import type { Term } from './functional';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { samplesIn } from './range';

/** How the curve goes on outside a limit. */
export interface OutsideState {
  /** Mean distance of the curve from the baseline's line carried on, over the stretch outside; unit of y. */
  readonly distance: Measured;
  /** Slope of the curve there less that of the line, unit of y per s. */
  readonly slope: Measured;
  /** The distance over sigma of one reading, the mismatch of slope over its own noise. */
  readonly sigmas: number;
  readonly slopeErrors: number;
  /** Whether the limit stands on level ground: see `outsideOf`. */
  readonly level: boolean;
}

const SURE = 3;
/** Smaller than this share of the height, a distance or a mismatch is of no account, however sure. */
const MATERIAL = 0.01;

/**
 * The stretch of length |`reach`| outside a limit (before it for a negative `reach`). The limit is not level where the
 * curve there is, on average, more than three sigma off the baseline's line, or its slope differs by more than three
 * standard errors, each only where it amounts to more than a hundredth of the height. Null where there are fewer than
 * three samples outside.
 */
export function outsideOf(
  curve: Curve,
  limit: number,
  reach: number,
  line: Line,
  height: number,
  noise: Noise,
): OutsideState | null {
  const window = reach < 0 ? { from: limit + reach, to: limit } : { from: limit, to: limit + reach };
  const { first, last } = samplesIn(curve.x, window);
  if (last - first < 3) return null;
  const fit = fitPolynomial(curve.x, curve.y, first, last, 1);
  const middle = (curve.x[first] + curve.x[last - 1]) / 2;
  const less = (terms: readonly Term[]): readonly Term[] => terms.map(({ times, of }) => ({ times: -times, of }));
  const measured = (value: number, terms: readonly Term[]): Measured => ({
    value,
    noise: noiseOf(noise, curve.x, terms),
    dof: noise.dof,
  });
  const distance = measured(fit.at(middle) - line.at(middle), [
    { times: 1, of: fit.functional(middle) },
    ...less(line.termsAt(middle)),
  ]);
  const slope = measured(fit.at(middle, 1) - line.slope, [
    { times: 1, of: fit.functional(middle, 1) },
    ...less(line.slopeTerms()),
  ]);
  const sigma = Math.max(noise.sigma, distance.noise);
  const sigmas = sigma > 0 ? Math.abs(distance.value) / sigma : Infinity;
  const slopeErrors = slope.noise > 0 ? Math.abs(slope.value) / slope.noise : Infinity;
  const material = MATERIAL * Math.abs(height);
  const off = sigmas > SURE && Math.abs(distance.value) > material;
  const tilted = slopeErrors > SURE && Math.abs(slope.value * reach) > material;
  return { distance, slope, sigmas, slopeErrors, level: !off && !tilted };
}
