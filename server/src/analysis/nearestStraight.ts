import { BLOCKS_IN_SPAN, straightRule } from './aroundPeak';
import type { Curve } from './curve';
import type { Noise } from './noise';
import { firstAfter, firstAtOrAfter } from './range';
import { StraightOutward } from './straightOutward';
import { timeBlocks } from './timeBlocks';

export interface NearestStraightOptions {
  /** The limit of a window, s. */
  readonly edge: number;
  /** -1: out of the window is earlier. */
  readonly outward: 1 | -1;
  /** How far to look, s. */
  readonly reach: number;
  /** Length of the stretch looked for, s. */
  readonly span: number;
}

/**
 * The middle (s) of the first stretch outside a limit that is straight within three sigma and no flank, as `aroundPeak`
 * finds it; null where none lies within reach. `already`: the stretch begins at the limit itself.
 */
export function nearestStraight(
  curve: Curve,
  noise: Noise,
  { edge, outward, reach, span }: NearestStraightOptions,
): { readonly at: number; readonly already: boolean } | null {
  const { x, y } = curve;
  if (!(edge > x[0] && edge < x[x.length - 1])) return null;
  const range = { first: firstAtOrAfter(x, edge - reach - span), last: firstAfter(x, edge + reach + span) };
  const blocks = timeBlocks(x, y, range, span / BLOCKS_IN_SPAN, edge);
  const n = blocks.x.length;
  if (n < 4) return null;
  const start = firstAtOrAfter(blocks.x, edge);
  const found = new StraightOutward(blocks, straightRule(blocks, span, noise)).find(
    start,
    outward,
    outward > 0 ? n : 0,
  );
  if (found === null || Math.abs(found.middle - edge) > reach) return null;
  return { at: found.middle, already: outward > 0 ? found.first === start : found.last === start };
}
