import type { Noise } from './noise';
import type { SampleRange } from './range';
import { keptBy } from './thinnedCurve';

/** Means over successive blocks of time, ascending: what a long stretch looks like from far away. */
export interface TimeBlocks {
  /** Mean abscissa, mean ordinate and number of samples of each block. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly counts: Float64Array;
  /** `bounds[k]` to `bounds[k + 1]` (exclusive) are the samples of block k. */
  readonly bounds: Int32Array;
}

/**
 * Cuts samples into blocks `length` long (in the unit of x), counted from `origin` so that `origin` is always a border
 * between blocks; a block holds at least one sample, hence on a sparse grid every sample is a block of its own.
 */
export function timeBlocks(
  x: Float64Array,
  y: Float64Array,
  { first, last }: SampleRange,
  length: number,
  origin: number,
): TimeBlocks {
  const bounds: number[] = [];
  let block = NaN;
  for (let i = first; i < last; i++) {
    const own = length > 0 ? Math.floor((x[i] - origin) / length) : i;
    if (own !== block) bounds.push(i);
    block = own;
  }
  const n = bounds.length;
  bounds.push(Math.max(first, last));
  const means = { x: new Float64Array(n), y: new Float64Array(n), counts: new Float64Array(n) };
  for (let k = 0; k < n; k++) {
    const from = bounds[k];
    const count = bounds[k + 1] - from;
    let sumX = 0;
    let sumY = 0;
    // Centred on the first sample of the block, so that a large offset in time or signal costs no digits.
    for (let i = from; i < bounds[k + 1]; i++) {
      sumX += x[i] - x[from];
      sumY += y[i] - y[from];
    }
    means.x[k] = x[from] + sumX / count;
    means.y[k] = y[from] + sumY / count;
    means.counts[k] = count;
  }
  return { ...means, bounds: Int32Array.from(bounds) };
}

/** The noise of block means, see `thinnedNoise`; `sigma` becomes that of a mean. */
export function noiseOfTimeBlocks(noise: Noise, blocks: TimeBlocks): Noise {
  const n = blocks.x.length;
  if (n < 2) return noise;
  const perBlock = (blocks.bounds[n] - blocks.bounds[0]) / n;
  const length = (blocks.x[n - 1] - blocks.x[0]) / (n - 1);
  return {
    ...noise,
    sigma: noise.sigma / Math.sqrt(perBlock),
    components: noise.components.map(({ variance, time }) => ({
      variance: variance * keptBy(perBlock, length, time),
      time,
    })),
  };
}
