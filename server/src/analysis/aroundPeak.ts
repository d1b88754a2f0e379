import type { Curve, Window } from './curve';
import { silent, type Noise } from './noise';
import { firstAfter, firstAtOrAfter } from './range';
import { StraightOutward } from './straightOutward';
import { timeBlocks, type TimeBlocks } from './timeBlocks';

export interface AroundPeakOptions {
  /** Where to begin, s: on the effect. */
  readonly at: number;
  /** How far an end may lie from there, s. */
  readonly within: number;
  /** Length of the level stretch an end stands in the middle of, s. */
  readonly span: number;
}

/** Blocks in a span. */
export const BLOCKS_IN_SPAN = 10;
/** A departure below this share of the range of the signal looked at is none: noise-free curves are level somewhere. */
const FLOOR = 3e-4;

/**
 * The window of a heat-flow effect around a time: from there outward on both sides to the middle of the first stretch of
 * length `span` that is straight within three sigma and no flank (its slope, less the usual one, below a seventh of the steepest passed). Sees
 * data, never windows. Null where one side has no such stretch within `within`, or the data end before it.
 */
export function aroundPeak(curve: Curve, noise: Noise | null, options: AroundPeakOptions): Window | null {
  const { at, within, span } = options;
  const { x, y } = curve;
  if (!(at > x[0] && at < x[x.length - 1])) return null;
  const range = {
    first: firstAtOrAfter(x, at - within - span / 2),
    last: firstAfter(x, at + within + span / 2),
  };
  const blocks = timeBlocks(x, y, range, span / BLOCKS_IN_SPAN, at);
  const n = blocks.x.length;
  if (n < 2) return null;
  const outward = new StraightOutward(blocks, straightRule(blocks, span, noise ?? silent));
  const start = firstAtOrAfter(blocks.x, at);
  const left = outward.find(start, -1, 0);
  const right = outward.find(start, 1, n);
  if (left === null || right === null) return null;
  if (at - left.middle > within || right.middle - at > within) return null;
  return { from: left.middle, to: right.middle };
}

/** What straight means for blocks of a curve: on a sparse grid a span holds few blocks, but never fewer than four. */
export function straightRule(
  blocks: TimeBlocks,
  span: number,
  noise: Noise,
): { length: number; noise: Noise; floor: number } {
  const n = blocks.x.length;
  const spacing = (blocks.x[n - 1] - blocks.x[0]) / (n - 1);
  let low = Infinity;
  let high = -Infinity;
  for (const value of blocks.y) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return { length: Math.max(4, Math.round(span / spacing)), noise, floor: FLOOR * (high - low) };
}
