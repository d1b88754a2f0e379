import type { Curve, Window } from './curve';
import type { Functional } from './functional';
import { localNoise } from './localNoise';
import { localPolynomial } from './localPolynomial';
import type { Measured } from './measured';
import { noiseOf, type Noise, type NoiseComponent } from './noise';
import { fitPolynomial } from './polynomialFit';
import { firstAtOrAfter, samplesAround, samplesIn } from './range';
import { slopeAt, slopeCurve, type SlopeCurve } from './slopeCurve';
import { thinnedTo } from './thinned';

/** Widths tried to place the steepest point grow by at least this factor, at most so often. */
const GROWTH = 1.25;
const WIDTHS = 8;
/** Placed well enough: a share of the width of the slope's peak at three quarters of its height. */
const PLACED = 0.01;
/** Averages a width is cut into for placing; their own bias is far below any noise. */
const BLOCKS = 40;
/** Noise of the slope, as a share of it, up to which the largest slope can be told from its neighbours. */
const CLEAR = 0.02;

/** The steepest point of a curve in a window, and the tangent there. */
export interface Steepest {
  readonly time: Measured;
  /** dy/dt there, per s, with its sign. */
  readonly slope: Measured;
  /** Ordinate of the tangent at `t`. */
  tangent(t: number): number;
  /** The same as a functional of the readings. */
  tangentFunctional(t: number): Functional;
  readonly slopeFunctional: Functional;
  /** The noise where it is steep, which may be more than in the segment. */
  readonly noise: Noise | null;
}

/**
 * The steepest fall or rise of a curve inside a window.
 *
 * Where: the extremum of the slope found on `slopeCurve`, then placed as the zero of the second derivative of a local
 * quartic. On an exact curve both have the width `smooth`. Under noise they are widened: for finding, until the slope is
 * known to 2 %; for placing, until the point is known to a hundredth of the width of the slope's peak (at three quarters
 * of its height), never beyond that width, where a quartic still follows the peak. The uncertainty is -δm''/m'''.
 *
 * How steep: the slope of the local cubic of full width `smooth` there, on all readings. Placing and reading use different
 * widths, so that noise is not picked where it happens to be steepest. Null where the window holds no slope of that sign.
 *
 * Where the readings scatter more about the steepest point than in the segment, their own scatter counts (`localNoise`).
 * `noise` null: taken as an exact curve. `propagate` false: same numbers, uncertainties left out.
 */
export function steepest(
  curve: Curve,
  window: Window,
  direction: 'falling' | 'rising',
  options: { smooth: number; noise: Noise | null; propagate?: boolean },
): Steepest | null {
  const sign = direction === 'falling' ? -1 : 1;
  let width = Math.max(options.smooth, leastWidth(curve, window));
  let slopes = slopeCurve(curve, window, width);
  let start = coarsest(curve, slopes, sign, width);
  if (start === null) return null;
  const noise = options.noise && localNoise(options.noise, curve, start, width);
  if (noise !== null) {
    const { value, noise: unsure } = slopeAbout(curve, start, width, noise);
    const wanted = unsure / (CLEAR * Math.abs(value));
    if (wanted > 1) {
      // The noise of a slope falls with the width to the power 3/2.
      width = Math.min(width * wanted ** (2 / 3), Math.max(width, (window.to - window.from) / 4));
      slopes = slopeCurve(curve, window, width);
      start = coarsest(curve, slopes, sign, width) ?? start;
    }
  }
  const peak = noise === null ? null : peakOfSlope(slopes, start, sign);
  const placed = place(curve, window, start, sign, width, peak, noise);
  return steepestAt(curve, placed, { ...options, noise });
}

function steepestAt(
  curve: Curve,
  { time, noise: wander }: Placed,
  { smooth, noise, propagate = true }: { smooth: number; noise: Noise | null; propagate?: boolean },
): Steepest {
  const fit = localPolynomial(curve, time, smooth, 3);
  const slope = fit.at(time, 1);
  const value = fit.at(time);
  const slopeFunctional = fit.functional(time, 1);
  const known = noise !== null && propagate;
  const dof = noise?.dof ?? null;
  return {
    time: { value: time, noise: known ? wander : 0, dof },
    slope: { value: slope, noise: known ? noiseOf(noise, curve.x, [{ times: 1, of: slopeFunctional }]) : 0, dof },
    tangent: (t) => value + slope * (t - time),
    tangentFunctional(t) {
      const at = fit.functional(time);
      const weights = at.weights.map((w, i) => w + (t - time) * slopeFunctional.weights[i]);
      return { first: at.first, weights };
    },
    slopeFunctional,
    noise,
  };
}

const known = new WeakMap<Noise, Map<string, { value: number; noise: number }>>();
const KEPT = 64;

/** The slope and its noise at the whole width next to `t`, kept: good enough to choose widths by. */
function slopeAbout(curve: Curve, t: number, width: number, noise: Noise): { value: number; noise: number } {
  const step = Math.round((t - curve.x[0]) / width);
  let kept = known.get(noise);
  if (kept === undefined || kept.size > KEPT) known.set(noise, (kept = new Map()));
  const key = `${step} ${width} ${curve.x[0]} ${curve.x.length}`;
  let found = kept.get(key);
  if (found === undefined) kept.set(key, (found = slopeAt(curve, curve.x[0] + step * width, width, noise)));
  return found;
}

/** The width that holds the five readings a cubic needs. */
function leastWidth(curve: Curve, window: Window): number {
  const { first, last } = samplesIn(curve.x, window);
  return last - first < 2 ? 0 : (4 * (curve.x[last - 1] - curve.x[first])) / (last - 1 - first);
}

function coarsest(curve: Curve, { x, slope }: SlopeCurve, sign: number, smooth: number): number | null {
  const first = curve.x[0] + smooth / 2;
  const last = curve.x[curve.x.length - 1] - smooth / 2;
  let best: number | null = null;
  for (const inner of [true, false]) {
    // A one-sided fit at the end of the data is several times as noisy: taken only where nothing else is there.
    for (let i = 0; i < x.length; i++) {
      if (inner && (x[i] < first || x[i] > last)) continue;
      if (sign * slope[i] > 0 && (best === null || sign * slope[i] > sign * slope[best])) best = i;
    }
    if (best !== null) break;
  }
  return best === null ? null : x[best];
}

interface Placed {
  readonly time: number;
  readonly noise: number;
}

function place(
  curve: Curve,
  window: Window,
  start: number,
  sign: number,
  width: number,
  peak: PeakOfSlope | null,
  noise: Noise | null,
): Placed {
  const allowed = {
    from: Math.min(window.from, start - width / 2),
    to: Math.max(window.to, start + width / 2),
  };
  let best: Placed | null = null;
  let wide = width;
  for (let k = 0; k < WIDTHS; k++) {
    const zero = curvatureZero(curve, allowed, best?.time ?? start, wide, sign, noise);
    if (peak === null && zero === null) break;
    const before = wide;
    if (zero === null) {
      wide = Math.min(wide * GROWTH, peak?.width ?? 0);
      if (!(wide > before)) break;
      continue;
    }
    const third = Math.min(zero.third, peak?.third ?? Infinity);
    best = { time: zero.time, noise: third > 0 ? zero.second / third : Infinity };
    if (peak === null || best.noise <= PLACED * peak.width) break;
    // The noise of a second derivative falls with the width to the power 5/2.
    wide = Math.min(wide * Math.max(GROWTH, (best.noise / (PLACED * peak.width)) ** 0.4), peak.width);
    if (!(wide > before)) break;
  }
  const widest = (peak?.width ?? width) / Math.sqrt(12);
  // Where the top is flat the point may lie anywhere in it.
  return best === null ? { time: start, noise: widest } : { time: best.time, noise: Math.min(best.noise, widest) };
}

interface PeakOfSlope {
  /** Its width at three quarters of its height, s. */
  readonly width: number;
  /** The third derivative of the curve that a parabola of that width has. */
  readonly third: number;
}

function peakOfSlope({ x, slope }: SlopeCurve, start: number, sign: number): PeakOfSlope | null {
  if (x.length === 0) return null;
  const top = Math.min(x.length - 1, firstAtOrAfter(x, start));
  const height = sign * slope[top];
  let low = top;
  let high = top;
  while (low > 0 && sign * slope[low] > 0.75 * height) low--;
  while (high < x.length - 1 && sign * slope[high] > 0.75 * height) high++;
  const full = x[high] - x[low];
  return full > 0 ? { width: full, third: (2 * height) / (full * full) } : null;
}

/** The zero of the second derivative of a local quartic next to `start`, where the slope is an extremum of that sign. */
function curvatureZero(
  curve: Curve,
  allowed: Window,
  start: number,
  width: number,
  sign: number,
  noise: Noise | null,
): { time: number; second: number; third: number } | null {
  const { means, size } = thinnedTo(curve, width / BLOCKS);
  const within = samplesIn(means.x, allowed);
  let centre = start;
  for (let round = 0; round < 12; round++) {
    const { first, last } = samplesAround(means.x, centre, width, 7, within);
    const fit = fitPolynomial(means.x, means.y, first, last, 4, means.counts);
    const third = fit.at(centre, 3);
    if (!(sign * third < 0)) return null;
    const step = -fit.at(centre, 2) / third;
    if (Math.abs(step) > width / 2) return null;
    centre += Math.max(-width / 6, Math.min(width / 6, step));
    if (Math.abs(step) > 1e-7 * width && round < 11) continue;
    if (noise === null) return { time: centre, second: 0, third: Math.abs(third) };
    const of = fit.functional(centre, 2);
    const second = noiseOf({ ...noise, components: averaged(noise.components, means.x, first, last, size) }, means.x, [
      { times: 1, of },
    ]);
    return { time: centre, second, third: Math.abs(third) };
  }
  return null;
}

/** The noise of block means: white noise averages, slow noise hardly. */
function averaged(
  components: readonly NoiseComponent[],
  x: Float64Array,
  first: number,
  last: number,
  size: number,
): readonly NoiseComponent[] {
  if (size === 1) return components;
  const length = (x[last - 1] - x[first]) / (last - 1 - first);
  return components.map(({ variance, time }) => {
    if (time === 0) return { variance: variance / size, time };
    const r = length / time;
    return { variance: variance * Math.max(1 / size, (2 / (r * r)) * (r - 1 + Math.exp(-r))), time };
  });
}
