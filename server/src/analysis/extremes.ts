import type { Curve } from './curve';

/** Readings in a block. */
const SIZE = 64;

/** The smallest and the largest reading of each block; NaN where not asked for yet. */
interface Extremes {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

const known = new WeakMap<Curve, Extremes>();

/**
 * From sample `i` on, the first sample at which the curve is not certain to lie below (or not below) the straight line
 * `origin + slope·(x - centre)`: whole blocks are passed by their extremes, which are looked for once. A line that moves
 * over a curve thus costs the readings next to where they meet. The answer is computed as the difference itself is,
 * so that rounding does not matter.
 */
export function pastLine(
  curve: Curve,
  i: number,
  below: boolean,
  line: { readonly origin: number; readonly slope: number; readonly centre: number },
): number {
  const { x } = curve;
  let at = i;
  if (at % SIZE !== 0) return at;
  const extremes = extremesOf(curve);
  for (let k = at / SIZE; at + SIZE <= x.length; k++, at += SIZE) {
    if (Number.isNaN(extremes.low[k])) fill(extremes, curve, k);
    // Where the line is highest (or lowest) against the block.
    const end = line.slope > 0 === below ? at : at + SIZE - 1;
    const off = (below ? extremes.high[k] : extremes.low[k]) - line.origin - line.slope * (x[end] - line.centre);
    if (below ? !(off < 0) : off < 0) break;
  }
  return at;
}

function extremesOf(curve: Curve): Extremes {
  let extremes = known.get(curve);
  if (extremes === undefined) {
    const column = (): Float64Array => new Float64Array(Math.floor(curve.x.length / SIZE)).fill(NaN);
    known.set(curve, (extremes = { low: column(), high: column() }));
  }
  return extremes;
}

function fill({ low, high }: Extremes, { y }: Curve, k: number): void {
  let least = Infinity;
  let most = -Infinity;
  for (let i = k * SIZE; i < (k + 1) * SIZE; i++) {
    least = Math.min(least, y[i]);
    most = Math.max(most, y[i]);
  }
  low[k] = least;
  high[k] = most;
}
