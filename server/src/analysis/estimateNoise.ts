import { blockVariances } from './blockVariances';
import type { Curve, Window } from './curve';
import type { Noise, NoiseComponent } from './noise';
import { fitNoise } from './noiseModel';
import { fitPolynomial } from './polynomialFit';
import { firstAfter, samplesIn, type SampleRange } from './range';
import { resolutionOf } from './resolution';
import { quantile, scatterOf } from './robust';

/** Straight lines for sigma are this long, s (the definition of the language's reference). */
const LINE = 60;
/** Block means are taken up to this long, s: beyond it a mass step or a peak is taken for noise. */
const LONGEST_BLOCK = 60;
/** Residuals looked at for one scatter; more tell nothing new. */
const ENOUGH = 4000;
const MANY = 200;

/**
 * Estimates the noise of a signal in a segment, once for all that is evaluated there. O(n).
 *
 * `sigma` is 1.4826 times the median absolute residual about straight lines of 60 s (at least five readings), each
 * residual corrected for the freedom its line takes. The autocovariance is fitted to the scatter of block means of 1, 2,
 * 4, … readings up to 60 s (the idea of Allan, Proc. IEEE 54 (1966) 221, from memory, with fifth differences so that
 * the signal's own slope and curvature leave next to nothing), and is extrapolated as 1/f noise to the length of the segment.
 *
 * Rounded readings: where the noise is less than half the step, the error of rounding is what is known, step/√12 with
 * the correlation time over which readings stay the same. An exact curve gives a sigma near zero, never a division by it.
 */
export function estimateNoise(curve: Curve, window?: Window): Noise {
  const { x, y } = curve;
  const range = window === undefined ? { first: 0, last: x.length } : samplesIn(x, window);
  if (range.last - range.first < 5) return { sigma: 0, resolution: 0, components: [], dof: 1 };
  const interval = medianInterval(x, range);
  const duration = x[range.last - 1] - x[range.first];
  const about = lineScatter(curve, range);
  const resolution = resolutionOf(x, y, range);
  const rounding = resolution.step / Math.sqrt(12);
  // A staircase hides what is below its step: contrasts of its blocks would see steps, not noise.
  const stairs = about < 0.5 * resolution.step;
  const blocks = stairs ? [] : blockVariances(x, y, range, interval, LONGEST_BLOCK, ENOUGH);
  const components: readonly NoiseComponent[] = stairs
    ? [{ variance: rounding * rounding, time: Math.max(resolution.dwell, interval) }]
    : fitNoise(blocks, interval, duration);
  // Rounding is known from the readings alone.
  const count = stairs ? Infinity : blocks.length > 0 ? Math.round(blocks[blocks.length - 1].count) : 1;
  return {
    sigma: Math.max(about, rounding),
    resolution: resolution.step,
    components,
    dof: count > MANY ? null : Math.max(1, count),
  };
}

function medianInterval(x: Float64Array, { first, last }: SampleRange): number {
  const stride = Math.max(1, Math.floor((last - first) / 2000));
  const intervals: number[] = [];
  for (let i = first + 1; i < last; i += stride) intervals.push(x[i] - x[i - 1]);
  return quantile(Float64Array.from(intervals), 0.5);
}

function lineScatter({ x, y }: Curve, range: SampleRange): number {
  const lines: SampleRange[] = [];
  for (let i = range.first; i < range.last;) {
    const end = Math.min(range.last, Math.max(i + 5, firstAfter(x, x[i] + LINE, i, range.last)));
    if (end - i >= 5) lines.push({ first: i, last: end });
    i = end;
  }
  const stride = Math.max(1, Math.ceil((range.last - range.first) / ENOUGH));
  const residuals: number[] = [];
  for (let k = 0; k < lines.length; k += stride) {
    const { first, last } = lines[k];
    const line = fitPolynomial(x, y, first, last, 1);
    const n = last - first;
    let middle = 0;
    for (let i = first; i < last; i++) middle += (x[i] - x[first]) / n;
    let spread = 0;
    for (let i = first; i < last; i++) spread += (x[i] - x[first] - middle) ** 2;
    for (let i = first; i < last; i++) {
      const free = 1 - 1 / n - (x[i] - x[first] - middle) ** 2 / spread;
      residuals.push((y[i] - line.at(x[i])) / Math.sqrt(Math.max(free, 0.05)));
    }
  }
  return scatterOf(Float64Array.from(residuals));
}
