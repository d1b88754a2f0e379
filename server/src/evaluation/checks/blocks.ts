import type { Window } from '../../analysis/curve';
import { samplesIn } from '../../analysis/range';

/** Means over stretches of equal length. */
export interface Block {
  /** Mean time, s. */
  readonly time: number;
  readonly mean: number;
  readonly count: number;
}

/** Means of the good values over stretches of `length` s inside a window; stretches without two values are left out. */
export function blocksOf(x: Float64Array, y: Float64Array, window: Window, length: number): Block[] {
  const { first, last } = samplesIn(x, window);
  const blocks: Block[] = [];
  for (let i = first; i < last;) {
    const end = window.from + (Math.floor((x[i] - window.from) / length) + 1) * length;
    const start = i;
    let n = 0;
    let time = 0;
    let sum = 0;
    for (; i < last && x[i] < end; i++) {
      if (Number.isNaN(y[i])) continue;
      n++;
      time += x[i] - x[start];
      sum += y[i] - y[start];
    }
    if (i === start) i++;
    if (n >= 2 && !Number.isNaN(y[start]))
      blocks.push({ time: x[start] + time / n, mean: y[start] + sum / n, count: n });
  }
  return blocks;
}

/** The largest rise from an earlier to a later block. */
export function largestRise(
  blocks: readonly Block[],
): { readonly rise: number; readonly from: Block; readonly to: Block } | null {
  if (blocks.length < 2) return null;
  let lowest = blocks[0];
  let best = { rise: Number.NEGATIVE_INFINITY, from: blocks[0], to: blocks[1] };
  for (const block of blocks.slice(1)) {
    if (block.mean - lowest.mean > best.rise) best = { rise: block.mean - lowest.mean, from: lowest, to: block };
    if (block.mean < lowest.mean) lowest = block;
  }
  return best;
}

/** Slope of the means by least squares, per s, with its standard error from their scatter about the line. */
export function slopeOfBlocks(blocks: readonly Block[]): { readonly slope: number; readonly error: number } | null {
  const n = blocks.length;
  if (n < 4) return null;
  const mt = blocks.reduce((s, b) => s + (b.time - blocks[0].time) / n, 0);
  const my = blocks.reduce((s, b) => s + (b.mean - blocks[0].mean) / n, 0);
  let tt = 0;
  let ty = 0;
  for (const b of blocks) {
    const t = b.time - blocks[0].time - mt;
    tt += t * t;
    ty += t * (b.mean - blocks[0].mean - my);
  }
  const slope = ty / tt;
  let rest = 0;
  for (const b of blocks) rest += (b.mean - blocks[0].mean - my - slope * (b.time - blocks[0].time - mt)) ** 2;
  return { slope, error: Math.sqrt(rest / (n - 2) / tt) };
}

/** The mean of a block series at a time, by the straight line between neighbours; null outside. */
export function meanAt(blocks: readonly Block[], time: number): number | null {
  if (blocks.length === 0 || time < blocks[0].time || time > blocks[blocks.length - 1].time) return null;
  let low = 0;
  let high = blocks.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (blocks[middle].time <= time) low = middle;
    else high = middle;
  }
  const [a, b] = [blocks[low], blocks[high]];
  return b.time === a.time ? a.mean : a.mean + ((b.mean - a.mean) * (time - a.time)) / (b.time - a.time);
}

export function medianOf(values: readonly number[]): number {
  if (values.length === 0) return NaN;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
