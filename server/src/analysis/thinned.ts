import { blockMeans, type BlockMeans } from './blockMeans';
import type { Curve } from './curve';

const known = new WeakMap<Curve, Map<number, BlockMeans>>();

/**
 * The whole curve averaged in blocks of `size` readings from its first one on, for finding and looking. Kept as long as the
 * curve itself: windows that move over a run ask for the same averages again. Only powers of two are asked for, so that at
 * most twice the readings are kept.
 */
export function thinned(curve: Curve, size: number): BlockMeans {
  let sizes = known.get(curve);
  if (sizes === undefined) known.set(curve, (sizes = new Map<number, BlockMeans>()));
  let means = sizes.get(size);
  if (means === undefined) {
    means = blockMeans(curve.x, curve.y, { first: 0, last: curve.x.length }, size);
    sizes.set(size, means);
  }
  return means;
}
