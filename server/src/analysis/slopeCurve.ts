import { blockMeans } from './blockMeans';
import type { Curve, Window } from './curve';
import { localSlope } from './localSlope';
import { noiseOf, type Noise } from './noise';
import { localPolynomial } from './localPolynomial';
import { firstAfter, firstAtOrAfter, samplesAround, samplesIn, type SampleRange } from './range';

/** Points of the derivative curve within one smoothing width. */
const POINTS = 24;

/** The slope dy/dt of a curve on a grid of its own; `mass` loses where it is negative. */
export interface SlopeCurve {
  readonly x: Float64Array;
  readonly slope: Float64Array;
}

/**
 * The derivative dy/dt (per s) of a curve inside a window, by local cubics of full width `smooth` (s). Where the run has
 * more than 24 readings in that width, neighbours are averaged first to about 24 a width and the curve has one point for
 * each average: O(readings in the window), for looking and finding; numbers reported are then read from all readings by
 * `slopeAt`. Data beyond the window serve at its ends; only at the ends of the data is the fit one-sided.
 */
export function slopeCurve(curve: Curve, window: Window, smooth: number): SlopeCurve {
  const { x } = curve;
  const wide = samplesIn(x, { from: window.from - smooth, to: window.to + smooth });
  const size = blockSize(x, wide, smooth);
  const means =
    size === 1
      ? { x: x.subarray(wide.first, wide.last), y: curve.y.subarray(wide.first, wide.last) }
      : blockMeans(x, curve.y, wide, size);
  const from = firstAtOrAfter(means.x, window.from);
  const to = firstAfter(means.x, window.to, from);
  const slope = new Float64Array(to - from);
  let low = 0;
  let high = 0;
  for (let i = from; i < to; i++) {
    const centre = means.x[i];
    while (means.x[low] < centre - smooth / 2) low++;
    while (high < means.x.length && means.x[high] <= centre + smooth / 2) high++;
    let first = low;
    let last = high;
    if (last - first < 5) ({ first, last } = samplesAround(means.x, centre, smooth, 5));
    slope[i - from] = localSlope(means.x, means.y, first, last, centre);
  }
  return { x: means.x.subarray(from, to), slope };
}

/** Readings averaged to one so that a smoothing width holds about 24 averages. */
export function blockSize(x: Float64Array, { first, last }: SampleRange, smooth: number): number {
  const interval = (x[last - 1] - x[first]) / Math.max(1, last - 1 - first);
  return Math.max(1, Math.floor(smooth / interval / POINTS));
}

/** The slope dy/dt at `t` from all readings within `smooth`, and its noise. */
export function slopeAt(
  curve: Curve,
  t: number,
  smooth: number,
  noise: Noise | null,
): { value: number; noise: number } {
  const fit = localPolynomial(curve, t, smooth, 3);
  return {
    value: fit.at(t, 1),
    noise: noise === null ? 0 : noiseOf(noise, curve.x, [{ times: 1, of: fit.functional(t, 1) }]),
  };
}
