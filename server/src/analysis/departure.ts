import type { Curve, Window } from './curve';
import { meanFunctional } from './functional';
import type { StretchLine } from './level';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { firstAfter, firstAtOrAfter, samplesIn } from './range';
import { slopeAt } from './slopeCurve';
import { thinnedTo, type Thinned } from './thinned';

export interface DepartureOptions {
  /** How long the curve must stay off, s. */
  readonly duration: number;
  /** Height of the effect: without noise the curve is off at a ten-thousandth of it. */
  readonly step: number;
  readonly smooth: number;
  readonly noise: Noise | null;
  readonly propagate?: boolean;
}

const SIGMAS = 3;
const EXACT = 1e-4;
/** Averages in one duration; where a run has more readings than that they are averaged first. */
const AVERAGES = 8;

/** How far off is off: three sigma, or three times what slow noise does to the distance from the line. */
export function departureThreshold(curve: Curve, window: Window, line: StretchLine, options: DepartureOptions): number {
  const { noise, step } = options;
  if (noise === null) return EXACT * step;
  const middle = Math.min(curve.x.length - 2, firstAtOrAfter(curve.x, (window.from + window.to) / 2));
  const mean = runAbout(curve.x, middle, options.duration);
  const slow = noiseOf(noise, curve.x, [
    { times: 1, of: meanFunctional(mean.first, mean.last) },
    { times: -1, of: line.functional(curve.x[middle]) },
  ]);
  return Math.max(SIGMAS * noise.sigma, SIGMAS * slow, EXACT * step);
}

/**
 * The first departure of a curve from a line in the direction of an effect: when the mean distance over `duration` passes
 * three sigma and stays beyond for that long. The mean, because single readings that must all be off are off late. Null
 * where the curve never leaves.
 */
export function departureFrom(
  curve: Curve,
  window: Window,
  line: StretchLine,
  falling: boolean,
  options: DepartureOptions,
): Measured | null {
  const { duration, noise, propagate = true } = options;
  const { x } = curve;
  const { means } = thinnedTo(curve, duration / AVERAGES);
  const since = passageOfMean(means, window, line, falling, duration, departureThreshold(curve, window, line, options));
  if (since === null) return null;
  if (noise === null || !propagate) return { value: since, noise: 0, dof: noise?.dof ?? null };
  const run = runAbout(x, Math.min(x.length - 1, firstAtOrAfter(x, since)), duration);
  const speed = Math.abs(slopeAt(curve, since, Math.max(options.smooth, duration), null).value - line.slope);
  const u = noiseOf(noise, x, [
    { times: 1, of: meanFunctional(run.first, run.last) },
    { times: -1, of: line.functional(since) },
  ]);
  const widest = (window.to - window.from) / Math.sqrt(12);
  return { value: since, noise: speed > 0 ? Math.min(u / speed, widest) : widest, dof: noise.dof };
}

/** When the mean distance from the line over `duration` passes the limit for at least as long. */
function passageOfMean(
  { x, y }: Thinned,
  window: Window,
  line: StretchLine,
  falling: boolean,
  duration: number,
  limit: number,
): number | null {
  const { first, last } = samplesIn(x, window);
  if (last - first < 1) return null;
  const sign = falling ? -1 : 1;
  const origin = line.at(x[first]);
  const off = (i: number): number => sign * (y[i] - origin - line.slope * (x[i] - x[first]));
  let low = first;
  let high = first;
  let sum = 0;
  let previous = 0;
  let since: number | null = null;
  for (let i = first; i < last; i++) {
    while (high < last && (high <= i || x[high] <= x[i] + duration / 2)) sum += off(high++);
    while (low < i && x[low] < x[i] - duration / 2) sum -= off(low++);
    const mean = sum / (high - low);
    if (mean <= limit) since = null;
    else if (since === null) {
      const part = i === first || mean === previous ? 1 : (limit - previous) / (mean - previous);
      since = i === first ? x[i] : x[i - 1] + part * (x[i] - x[i - 1]);
    }
    if (since !== null && x[i] - since >= duration) break;
    previous = mean;
  }
  return since;
}

function runAbout(x: Float64Array, index: number, duration: number): { first: number; last: number } {
  const first = firstAtOrAfter(x, x[index] - duration / 2);
  return { first, last: Math.max(first + 1, firstAfter(x, x[index] + duration / 2)) };
}
