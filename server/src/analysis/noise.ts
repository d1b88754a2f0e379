import type { Functional, Term } from './functional';
import { sumOf } from './functional';

/** One part of the noise: readings `s` apart correlate as exp(-s / time); `time` 0 is white. */
export interface NoiseComponent {
  readonly variance: number;
  readonly time: number;
}

/** The noise of one signal in one segment. */
export interface Noise {
  /** Standard deviation of one reading about a straight line over 60 s: 1.4826 times the median absolute residual. */
  readonly sigma: number;
  /** The step to which the readings are rounded, 0 where none shows. */
  readonly resolution: number;
  /** Autocovariance as a sum of exponentials; a sum over times spaced by a factor is 1/f noise. */
  readonly components: readonly NoiseComponent[];
  /** Degrees of freedom of the estimate; null for many. */
  readonly dof: number | null;
}

/** No noise at all. */
export const silent: Noise = { sigma: 0, resolution: 0, components: [], dof: null };

/**
 * Variance of a linear functional of the samples, in the square of its unit: the sum over all pairs of samples of
 * weight times weight times autocovariance, exactly, in one pass per component, on any grid. `pieces` ascending and
 * disjoint (as `sumOf` gives them).
 */
export function varianceOf(noise: Noise, x: Float64Array, pieces: readonly Functional[]): number {
  let total = 0;
  for (const { variance, time } of noise.components) {
    if (variance > 0) total += variance * (time > 0 ? correlatedSum(x, pieces, time) : squareSum(pieces));
  }
  return total;
}

/** Standard uncertainty of a sum of terms. */
export function noiseOf(noise: Noise, x: Float64Array, terms: readonly Term[]): number {
  return Math.sqrt(varianceOf(noise, x, sumOf(terms)));
}

function squareSum(pieces: readonly Functional[]): number {
  let sum = 0;
  for (const { weights } of pieces) for (const w of weights) sum += w * w;
  return sum;
}

function correlatedSum(x: Float64Array, pieces: readonly Functional[], time: number): number {
  let squares = 0;
  let crossed = 0;
  let carried = 0;
  let at = pieces.length > 0 ? x[pieces[0].first] : 0;
  for (const { first, weights } of pieces) {
    for (let i = 0; i < weights.length; i++) {
      const t = x[first + i];
      carried *= decay((t - at) / time);
      at = t;
      const w = weights[i];
      squares += w * w;
      crossed += w * carried;
      carried += w;
    }
  }
  return Math.max(0, squares + 2 * crossed);
}

/** exp(-r); by series where r is small, which is where nearly all calls are (error below 1e-10). */
function decay(r: number): number {
  return r < 0.02 ? 1 - r * (1 - r * (0.5 - r * (1 / 6 - r / 24))) : Math.exp(-r);
}
