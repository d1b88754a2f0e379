import type { Curve } from './curve';
import type { SampleRange } from './range';

/** Readings in a block. */
const SIZE = 64;

/** The smallest and the largest reading of each block; NaN where not asked for yet. */
interface Blocks {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

const known = new WeakMap<Curve, Blocks>();

/** The smallest and the largest reading of a range. */
export interface Extremes {
  readonly least: number;
  readonly most: number;
}

/** The extremes of a range, from those of its whole blocks and the readings at its ends. */
export function extremesOver(curve: Curve, { first, last }: SampleRange): Extremes {
  const { y } = curve;
  const blocks = extremesOf(curve);
  let least = Infinity;
  let most = -Infinity;
  for (let i = first; i < last;) {
    const k = i / SIZE;
    if (i % SIZE === 0 && i + SIZE <= last) {
      if (Number.isNaN(blocks.low[k])) fill(blocks, curve, k);
      if (blocks.low[k] < least) least = blocks.low[k];
      if (blocks.high[k] > most) most = blocks.high[k];
      i += SIZE;
      continue;
    }
    if (y[i] < least) least = y[i];
    if (y[i] > most) most = y[i];
    i++;
  }
  return { least, most };
}

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

function extremesOf(curve: Curve): Blocks {
  let extremes = known.get(curve);
  if (extremes === undefined) {
    const column = (): Float64Array => new Float64Array(Math.floor(curve.x.length / SIZE)).fill(NaN);
    known.set(curve, (extremes = { low: column(), high: column() }));
  }
  return extremes;
}

function fill({ low, high }: Blocks, { y }: Curve, k: number): void {
  let least = Infinity;
  let most = -Infinity;
  for (let i = k * SIZE; i < (k + 1) * SIZE; i++) {
    least = Math.min(least, y[i]);
    most = Math.max(most, y[i]);
  }
  low[k] = least;
  high[k] = most;
}
