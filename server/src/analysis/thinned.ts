import { blockMeans, type BlockMeans } from './blockMeans';
import type { Curve } from './curve';

const known = new WeakMap<Curve, Map<number, BlockMeans>>();

/**
 * The whole curve averaged in blocks of so many readings, from its first one on, that a block is at most `length` s long;
 * the curve itself where that is less than two readings. For finding and looking. Kept as long as the curve: windows that
 * move over a run ask for the same averages again. Blocks are powers of two, so that at most twice the readings are kept.
 */
export function thinnedTo(curve: Curve, length: number): { readonly means: Thinned; readonly size: number } {
  const { x } = curve;
  const readings = (length * (x.length - 1)) / (x[x.length - 1] - x[0]);
  const size = readings < 2 ? 1 : 2 ** Math.floor(Math.log2(readings));
  return { means: size === 1 ? curve : blocksOf(curve, size), size };
}

/** A curve thinned; `counts` where its points are averages. */
export interface Thinned {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly counts?: Float64Array;
}

/** Of a long curve, blocks larger than this are joined from blocks of this size: one pass serves all sizes. */
const LEAST = 16;
const MANY = 16_384;

function blocksOf(curve: Curve, size: number): BlockMeans {
  let sizes = known.get(curve);
  if (sizes === undefined) known.set(curve, (sizes = new Map<number, BlockMeans>()));
  let means = sizes.get(size);
  if (means === undefined) {
    means =
      size > LEAST && curve.x.length > MANY
        ? joined(blocksOf(curve, LEAST), size / LEAST)
        : blockMeans(curve.x, curve.y, { first: 0, last: curve.x.length }, size);
    sizes.set(size, means);
  }
  return means;
}

/** Blocks of `count` neighbouring blocks each; the last takes what is left. */
function joined({ x, y, counts }: BlockMeans, count: number): BlockMeans {
  const blocks = Math.ceil(x.length / count);
  const means = { x: new Float64Array(blocks), y: new Float64Array(blocks), counts: new Float64Array(blocks) };
  for (let block = 0, i = 0; block < blocks; block++) {
    const end = Math.min(x.length, i + count);
    const start = i;
    let readings = 0;
    let sx = 0;
    let sy = 0;
    for (; i < end; i++) {
      readings += counts[i];
      sx += counts[i] * (x[i] - x[start]);
      sy += counts[i] * (y[i] - y[start]);
    }
    means.x[block] = x[start] + sx / readings;
    means.y[block] = y[start] + sy / readings;
    means.counts[block] = readings;
  }
  return means;
}
