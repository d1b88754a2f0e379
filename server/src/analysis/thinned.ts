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

function blocksOf(curve: Curve, size: number): BlockMeans {
  let sizes = known.get(curve);
  if (sizes === undefined) known.set(curve, (sizes = new Map<number, BlockMeans>()));
  let means = sizes.get(size);
  if (means === undefined) {
    means = blockMeans(curve.x, curve.y, { first: 0, last: curve.x.length }, size);
    sizes.set(size, means);
  }
  return means;
}
