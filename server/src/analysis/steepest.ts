import type { Curve, Window } from './curve';
import type { Functional } from './functional';
import { Kept } from './kept';
import { localNoise } from './localNoise';
import { localPolynomial } from './localPolynomial';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { placeSteepest, type PeakOfSlope, type Placed } from './placeSteepest';
import type { PolynomialFit } from './polynomialFit';
import { firstAtOrAfter, samplesIn } from './range';
import { slopeAt, slopeCurve, type SlopeCurve } from './slopeCurve';

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
  const allowed = { from: Math.min(window.from, start - width / 2), to: Math.max(window.to, start + width / 2) };
  const placed = placeSteepest(curve, allowed, { start, sign, width, peak, noise });
  return steepestAt(curve, placed, { ...options, noise });
}

/** The curve at one place: what does not depend on the window, kept with the curve. */
interface Touched {
  readonly fit: PolynomialFit;
  readonly slope: number;
  readonly value: number;
  readonly slopeFunctional: Functional;
  /** null: not asked for yet. */
  slopeNoise: number | null;
}

const touched = new Kept<Touched>();

function touch(curve: Curve, time: number, smooth: number, noise: Noise | null): Touched {
  return touched.of(curve, noise, `${time} ${smooth}`, () => {
    const fit = localPolynomial(curve, time, smooth, 3);
    const slopeFunctional = fit.functional(time, 1);
    return { fit, slope: fit.at(time, 1), value: fit.at(time), slopeFunctional, slopeNoise: null };
  });
}

function steepestAt(
  curve: Curve,
  { time, noise: wander }: Placed,
  { smooth, noise, propagate = true }: { smooth: number; noise: Noise | null; propagate?: boolean },
): Steepest {
  const at = touch(curve, time, smooth, noise);
  const { fit, slope, value, slopeFunctional } = at;
  const dof = noise?.dof ?? null;
  const known = noise !== null && propagate;
  if (known) at.slopeNoise ??= noiseOf(noise, curve.x, [{ times: 1, of: slopeFunctional }]);
  return {
    time: { value: time, noise: known ? wander : 0, dof },
    slope: { value: slope, noise: known ? (at.slopeNoise ?? 0) : 0, dof },
    tangent: (t) => value + slope * (t - time),
    tangentFunctional: (t) => fit.tangent(time, t),
    slopeFunctional,
    noise,
  };
}

const about = new Kept<{ value: number; noise: number }>();

/** The slope and its noise at the whole width next to `t`, kept: good enough to choose widths by. */
function slopeAbout(curve: Curve, t: number, width: number, noise: Noise): { value: number; noise: number } {
  const step = Math.round((t - curve.x[0]) / width);
  return about.of(curve, noise, `${step} ${width}`, () => slopeAt(curve, curve.x[0] + step * width, width, noise));
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
