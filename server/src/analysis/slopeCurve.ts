import type { Curve, Window } from './curve';
import { localPolynomial } from './localPolynomial';
import { localSlope } from './localSlope';
import { noiseOf, type Noise } from './noise';
import { firstAfter, firstAtOrAfter, samplesAround } from './range';
import { thinnedTo } from './thinned';

/** Points of the derivative curve within one smoothing width, at least; less than twice as many. */
const POINTS = 8;

/** The slope dy/dt of a curve on a grid of its own. */
export interface SlopeCurve {
  readonly x: Float64Array;
  readonly slope: Float64Array;
  /** Readings averaged to one point of the grid; 1: the grid is that of the readings. */
  readonly size: number;
}

/**
 * The derivative dy/dt (per s) of a curve inside a window, by local cubics of full width `smooth` (s). Where the run has
 * more than 16 readings in that width, neighbours are averaged first to between 8 and 16 a width and the curve has one
 * point for each average: for looking and finding; numbers reported are then read from all readings by `slopeAt`. Data
 * beyond the window serve at its ends; only at the ends of the data is the fit one-sided. The grid does not depend on the
 * window, and its points are computed once for a curve and width, however often a window moves.
 */
export function slopeCurve(curve: Curve, window: Window, smooth: number): SlopeCurve {
  const { means, size } = thinnedTo(curve, smooth / POINTS);
  const from = firstAtOrAfter(means.x, window.from);
  const to = firstAfter(means.x, window.to, from);
  const slope = slopesOf(curve, smooth, means.x.length);
  for (let i = from; i < to; i++) {
    if (!Number.isNaN(slope[i])) continue;
    const { first, last } = samplesAround(means.x, means.x[i], smooth, 5);
    slope[i] = localSlope(means.x, means.y, first, last, means.x[i]);
  }
  return { x: means.x.subarray(from, to), slope: slope.subarray(from, to), size };
}

const known = new WeakMap<Curve, Map<number, Float64Array>>();
/** Widths kept for a curve: those of one statement and of the windows beside it. */
const KEPT = 4;

/** Slopes on the grid of a width, NaN where not computed yet. */
function slopesOf(curve: Curve, smooth: number, length: number): Float64Array {
  let widths = known.get(curve);
  if (widths === undefined) known.set(curve, (widths = new Map<number, Float64Array>()));
  let slope = widths.get(smooth);
  if (slope === undefined) {
    if (widths.size >= KEPT) widths.delete([...widths.keys()][0]);
    widths.set(smooth, (slope = new Float64Array(length).fill(NaN)));
  }
  return slope;
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
