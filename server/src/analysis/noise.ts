import type { Functional, Term } from './functional';
import { squaresApart, sumOf } from './functional';

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

/** Against a piece of so many samples and so many correlation times, a component is as white noise. */
const MANY = 64;
const SHORT = 200;
/** A correlation time so many times as long as a group of samples sees the group as one. */
const GROUP = 8;
/** Groups that a piece keeps at least, so that its shape stays. */
const FEWEST = 64;

/**
 * Variance of a linear functional of the samples, in the square of its unit: the sum over all pairs of samples of weight
 * times weight times autocovariance, on any grid, in one pass per component. For components slow against the sampling,
 * neighbours are taken together (the error stays about a hundredth of the variance), and
 * components short against a piece are taken as white. `pieces` ascending and disjoint, as
 * `sumOf` gives them.
 */
export function varianceOf(noise: Noise, x: Float64Array, pieces: readonly Functional[]): number {
  const slow = noise.components.filter((c) => c.time > 0 && c.variance > 0).sort((a, b) => a.time - b.time);
  let total = 0;
  let white = 0;
  for (const c of noise.components) if (c.time === 0) white += c.variance;
  let grouped = pieces.map(({ first, weights }): Grouped => {
    const squares = squareSum(weights);
    total += white * squares;
    return { x: x.subarray(first, first + weights.length), weights, squares };
  });
  for (const { variance, time } of slow) {
    const short: Grouped[] = [];
    grouped = grouped.map((piece) => coarser(piece, time));
    for (const piece of grouped) {
      if (isLong(piece, time)) total += variance * asWhite(piece, time);
      else short.push(piece);
    }
    if (short.length > 0) total += variance * correlatedSum(short, time);
  }
  return total;
}

/** Standard uncertainty of a sum of terms. Of white noise alone it costs no weights. */
export function noiseOf(noise: Noise, x: Float64Array, terms: readonly Term[]): number {
  if (noise.components.every((c) => c.time === 0)) {
    const squares = squaresApart(terms);
    if (squares !== null) return Math.sqrt(noise.components.reduce((sum, c) => sum + c.variance, 0) * squares);
  }
  return Math.sqrt(varianceOf(noise, x, sumOf(terms)));
}

/** A piece of a functional on abscissae of its own. */
interface Grouped {
  readonly x: Float64Array;
  readonly weights: Float64Array;
  /** Sum of the squares of the weights. */
  readonly squares: number;
}

function isLong({ x }: Grouped, time: number): boolean {
  return x.length >= MANY && x[x.length - 1] - x[0] > SHORT * time;
}

/** Sum of squares times the sum of the autocorrelation over all lags of an even grid. */
function asWhite({ x, squares }: Grouped, time: number): number {
  const r = Math.exp(-(x[x.length - 1] - x[0]) / (x.length - 1) / time);
  return (squares * (1 + r)) / (1 - r);
}

function coarser(piece: Grouped, time: number): Grouped {
  let { x, weights } = piece;
  for (;;) {
    const n = weights.length;
    if (n < 2 * FEWEST || (2 * GROUP * (x[n - 1] - x[0])) / (n - 1) > time) break;
    const half = (n + 1) >> 1;
    const fewer = { x: new Float64Array(half), weights: new Float64Array(half) };
    for (let i = 0; i < half; i++) {
      const j = Math.min(2 * i + 1, n - 1);
      fewer.x[i] = (x[2 * i] + x[j]) / 2;
      fewer.weights[i] = j > 2 * i ? weights[2 * i] + weights[j] : weights[2 * i];
    }
    ({ x, weights } = fewer);
  }
  return weights === piece.weights ? piece : { x, weights, squares: squareSum(weights) };
}

function squareSum(weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i] * weights[i];
  return sum;
}

function correlatedSum(pieces: readonly Grouped[], time: number): number {
  let squares = 0;
  let crossed = 0;
  let carried = 0;
  let at = pieces.length > 0 ? pieces[0].x[0] : 0;
  for (const { x, weights } of pieces) {
    for (let i = 0; i < weights.length; i++) {
      const t = x[i];
      const w = weights[i];
      carried *= decay((t - at) / time);
      at = t;
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
