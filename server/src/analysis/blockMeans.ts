import type { SampleRange } from './range';

/** Readings averaged in blocks of equally many neighbours: mean abscissa, mean ordinate, readings in each block. */
export interface BlockMeans {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly counts: Float64Array;
}

/**
 * Averages a range in blocks of `size` readings; the last block takes what is left. Used to find where to look and to
 * see slow noise, never for a number that is reported.
 */
export function blockMeans(x: Float64Array, y: Float64Array, range: SampleRange, size: number): BlockMeans {
  const { first, last } = range;
  const blocks = Math.max(1, Math.ceil((last - first) / size));
  const means = { x: new Float64Array(blocks), y: new Float64Array(blocks), counts: new Float64Array(blocks) };
  for (let block = 0, i = first; block < blocks; block++) {
    const end = Math.min(last, i + size);
    const start = i;
    let sx = 0;
    let sy = 0;
    // Sums about the first reading of the block: exact wherever time starts.
    for (; i < end; i++) {
      sx += x[i] - x[start];
      sy += y[i] - y[start];
    }
    means.x[block] = x[start] + sx / (end - start);
    means.y[block] = y[start] + sy / (end - start);
    means.counts[block] = end - start;
  }
  return means;
}
