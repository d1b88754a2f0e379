import type { Curve, Window } from './curve';
import { localPolynomial } from './localPolynomial';
import { localSlope } from './localSlope';
import { noiseOf, type Noise } from './noise';
import { firstAfter, firstAtOrAfter, samplesAround } from './range';
import { thinnedTo, type Thinned } from './thinned';

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
 * window, and a point is computed again only for a width that takes other neighbours, however often a window moves.
 */
export function slopeCurve(curve: Curve, window: Window, smooth: number): SlopeCurve {
  const { means, size } = thinnedTo(curve, smooth / POINTS);
  const from = firstAtOrAfter(means.x, window.from);
  const to = firstAfter(means.x, window.to, from);
  const grid = gridOf(curve, size, means.x.length);
  fillSlopes(grid, means, smooth, from, to);
  return { x: means.x.subarray(from, to), slope: grid.slope.slice(from, to), size };
}

/** Slopes on one grid, each with the points it was fitted to: widths that take the same points have the same slope. */
interface Grid {
  readonly slope: Float64Array;
  readonly first: Int32Array;
  /** Exclusive; 0: not computed yet. */
  readonly last: Int32Array;
}

const known = new WeakMap<Curve, Map<number, Grid>>();

function gridOf(curve: Curve, size: number, length: number): Grid {
  let grids = known.get(curve);
  if (grids === undefined) known.set(curve, (grids = new Map<number, Grid>()));
  let grid = grids.get(size);
  if (grid === undefined) {
    grid = { slope: new Float64Array(length), first: new Int32Array(length), last: new Int32Array(length) };
    grids.set(size, grid);
  }
  return grid;
}

const FEWEST = 5;

function fillSlopes({ slope, first, last }: Grid, { x, y }: Thinned, smooth: number, from: number, to: number): void {
  let low = firstAtOrAfter(x, x[from] - smooth / 2);
  let high = low;
  for (let i = from; i < to; i++) {
    while (x[low] < x[i] - smooth / 2) low++;
    while (high < x.length && x[high] <= x[i] + smooth / 2) high++;
    let a = low;
    let b = high;
    if (b - a < FEWEST) ({ first: a, last: b } = samplesAround(x, x[i], smooth, FEWEST));
    if (a === first[i] && b === last[i]) continue;
    slope[i] = localSlope(x, y, a, b, x[i]);
    first[i] = a;
    last[i] = b;
  }
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
