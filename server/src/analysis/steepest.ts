import { blockMeans } from './blockMeans';
import type { Curve, Window } from './curve';
import type { Functional } from './functional';
import { localPolynomial } from './localPolynomial';
import type { Measured } from './measured';
import { noiseOf, type Noise, type NoiseComponent } from './noise';
import { fitPolynomial, type PolynomialFit } from './polynomialFit';
import { firstAfter, firstAtOrAfter, samplesAround } from './range';
import { slopeCurve } from './slopeCurve';

/** Widths tried to place the steepest point grow by this factor, at most so often. */
const GROWTH = 1.4;
const WIDTHS = 10;
/** Averages a width is cut into for placing; their own bias is far below any noise. */
const BLOCKS = 60;
/** A wider fit stands while it moves the point by less than so many uncertainties of each narrower one. */
const AGREE = 1;

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
}

/**
 * The steepest fall or rise of a curve inside a window.
 *
 * Where: the extremum of the slope found on `slopeCurve`, then placed as the zero of the second derivative of a local
 * quartic of width `smooth`. Under noise that zero wanders, so the width is enlarged as long as the point stays where
 * every narrower fit has it within its noise (Lepski's rule, Theory Probab. Appl. 35 (1991) 454, from memory); the
 * uncertainty is that of the widest fit taken, -δm''/m''', and the last move. On an exact curve the width stays `smooth`.
 *
 * How steep: the slope of the local cubic of full width `smooth` there, on all readings. Placing and reading use different
 * widths, so that noise is not picked where it happens to be steepest. Null where the window holds no slope of that sign.
 *
 * `noise` null: taken as an exact curve. `propagate` false: same numbers, uncertainties left out.
 */
export function steepest(
  curve: Curve,
  window: Window,
  direction: 'falling' | 'rising',
  options: { smooth: number; noise: Noise | null; propagate?: boolean },
): Steepest | null {
  const sign = direction === 'falling' ? -1 : 1;
  const start = coarsest(curve, window, sign, options.smooth);
  if (start === null) return null;
  const placed = place(curve, window, start, sign, options.smooth, options.noise);
  return steepestAt(curve, placed.time, placed.fit, placed.moved, options);
}

function steepestAt(
  curve: Curve,
  time: number,
  placing: PolynomialFit | null,
  moved: number,
  { smooth, noise, propagate = true }: { smooth: number; noise: Noise | null; propagate?: boolean },
): Steepest {
  const fit = localPolynomial(curve, time, smooth, 3);
  const slope = fit.at(time, 1);
  const value = fit.at(time);
  const slopeFunctional = fit.functional(time, 1);
  const known = noise !== null && propagate;
  const dof = noise?.dof ?? null;
  let wander = 0;
  if (known && placing !== null) {
    const third = Math.abs(placing.at(time, 3));
    const second = noiseOf(noise, curve.x, [{ times: 1, of: placing.functional(time, 2) }]);
    // Where the top is flat the point may lie anywhere in the fit.
    const limit = (curve.x[placing.last - 1] - curve.x[placing.first]) / Math.sqrt(12);
    wander = Math.min(third > 0 ? second / third : limit, limit);
  }
  return {
    time: { value: time, noise: known ? Math.hypot(wander, moved) : 0, dof },
    slope: { value: slope, noise: known ? noiseOf(noise, curve.x, [{ times: 1, of: slopeFunctional }]) : 0, dof },
    tangent: (t) => value + slope * (t - time),
    tangentFunctional(t) {
      const at = fit.functional(time);
      const weights = at.weights.map((w, i) => w + (t - time) * slopeFunctional.weights[i]);
      return { first: at.first, weights };
    },
    slopeFunctional,
  };
}

function coarsest(curve: Curve, window: Window, sign: number, smooth: number): number | null {
  const { x, slope } = slopeCurve(curve, window, smooth);
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
  readonly fit: PolynomialFit | null;
  readonly moved: number;
}

function place(curve: Curve, window: Window, start: number, sign: number, smooth: number, noise: Noise | null): Placed {
  const from = Math.min(window.from, start - smooth / 2);
  const to = Math.max(window.to, start + smooth / 2);
  const x = curve.x;
  const within = { first: firstAtOrAfter(x, from), last: firstAfter(x, to) };
  const tried: { time: number; noise: number; width: number }[] = [];
  let centre = start;
  for (let k = 0; k < WIDTHS; k++) {
    const width = smooth * GROWTH ** k;
    if (k > 0 && width > to - from) break;
    const zero = curvatureZero(curve, within, centre, width, sign, noise);
    if (zero === null) {
      if (tried.length > 0) break;
      continue;
    }
    const stays = tried.every((t) => Math.abs(t.time - zero.time) <= AGREE * t.noise);
    if (tried.length > 0 && !stays) break;
    tried.push({ ...zero, width });
    centre = zero.time;
    if (noise === null) break;
  }
  if (tried.length === 0) return { time: start, fit: null, moved: 0 };
  const { time, width } = tried[tried.length - 1];
  const moved = tried.length > 1 ? Math.abs(time - tried[tried.length - 2].time) : 0;
  const { first, last } = samplesAround(x, time, width, 7, within);
  return { time, fit: fitPolynomial(x, curve.y, first, last, 4), moved };
}

/** The zero of the second derivative of a local quartic next to `start`, where the slope is an extremum of that sign. */
function curvatureZero(
  curve: Curve,
  within: { first: number; last: number },
  start: number,
  width: number,
  sign: number,
  noise: Noise | null,
): { time: number; noise: number } | null {
  let centre = start;
  for (let round = 0; round < 12; round++) {
    const range = samplesAround(curve.x, centre, width, 7, within);
    const size = Math.max(1, Math.floor((range.last - range.first) / BLOCKS));
    const means = blockMeans(curve.x, curve.y, range, size);
    const fit = fitPolynomial(means.x, means.y, 0, means.x.length, 4, size > 1 ? means.counts : undefined);
    const third = fit.at(centre, 3);
    if (!(sign * third < 0)) return null;
    const step = -fit.at(centre, 2) / third;
    if (Math.abs(step) > width / 2) return null;
    centre += Math.max(-width / 6, Math.min(width / 6, step));
    if (Math.abs(step) > 1e-7 * width && round < 11) continue;
    if (noise === null) return { time: centre, noise: 0 };
    const of = fit.functional(centre, 2);
    const variance = noiseOf({ ...noise, components: averaged(noise.components, means.x, size) }, means.x, [
      { times: 1, of },
    ]);
    return { time: centre, noise: variance / Math.abs(third) };
  }
  return null;
}

/** The noise of block means: white noise averages, slow noise hardly. */
function averaged(components: readonly NoiseComponent[], x: Float64Array, size: number): readonly NoiseComponent[] {
  if (size === 1) return components;
  const length = (x[x.length - 1] - x[0]) / (x.length - 1);
  return components.map(({ variance, time }) => {
    if (time === 0) return { variance: variance / size, time };
    const r = length / time;
    return { variance: variance * Math.max(1 / size, (2 / (r * r)) * (r - 1 + Math.exp(-r))), time };
  });
}
