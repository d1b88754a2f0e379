import { CONTRAST, type BlockVariance } from './noiseModel';
import type { SampleRange } from './range';
import { clippedVariance } from './robust';

/** Independent numbers at least for a variance to count. */
const FEWEST = 12;
/** Neighbouring fifth differences overlap; so many are worth one independent (sum of the squared correlations). */
const OVERLAP = 2.91;

/**
 * Robust variances of the contrasts of neighbouring block means, for blocks of 1, 2, 4, … readings up to `longest` s
 * (and while there are enough of them). At most `most` contrasts of each length are looked at, evenly spread. `widest`: the
 * longest way between neighbouring readings, where that is known; without a gap only the ordinates need averages.
 */
export function blockVariances(
  x: Float64Array,
  y: Float64Array,
  { first, last }: SampleRange,
  interval: number,
  longest: number,
  most: number,
  widest = Infinity,
): BlockVariance[] {
  const variances: BlockVariance[] = [];
  // A hundredth less than a gap: no rounding makes one of it.
  const gapless = widest < 0.99 * GAP * interval;
  let means: Means = { x: gapless ? null : x.subarray(first, last), y: y.subarray(first, last) };
  for (let size = 1; size === 1 || size * interval <= longest; size *= 2) {
    if (size > 1) means = pairsOf(means);
    const { variance, kept } = clippedVariance(withoutRepeats(contrastsOf(means, size * interval, most)));
    const count = kept / OVERLAP;
    if (count < FEWEST && variances.length > 0) break;
    variances.push({ size, variance, count });
  }
  return variances;
}

interface Means {
  /** null: there is no gap to look for. */
  readonly x: Float64Array | null;
  readonly y: Float64Array;
}

/** The means of neighbours, two by two: blocks of twice as many readings. One that is left over is left out. */
function pairsOf({ x, y }: Means): Means {
  return { x: x === null ? null : halved(x), y: halved(y) };
}

function halved(values: Float64Array): Float64Array {
  const pairs = new Float64Array(values.length >> 1);
  for (let k = 0, i = 0; k < pairs.length; k++, i += 2) pairs[k] = values[i] + (values[i + 1] - values[i]) * 0.5;
  return pairs;
}

/** Blocks further apart than so many of their lengths are no neighbours. */
const GAP = 1.5;

function contrastsOf({ x, y }: Means, usual: number, most: number): Float64Array {
  const stride = Math.max(1, Math.ceil(y.length / most));
  const contrasts = new Float64Array(Math.ceil(y.length / stride));
  const more = CONTRAST.length - 1;
  const [, w1, w2, w3, w4, w5] = CONTRAST;
  const longest = GAP * more * usual;
  let n = 0;
  for (let k = 0; k + more < y.length; k += stride) {
    if (x !== null && x[k + more] - x[k] > longest) continue;
    const y0 = y[k];
    contrasts[n++] =
      w1 * (y[k + 1] - y0) + w2 * (y[k + 2] - y0) + w3 * (y[k + 3] - y0) + w4 * (y[k + 4] - y0) + w5 * (y[k + 5] - y0);
  }
  return contrasts.subarray(0, n);
}

/** A stretch of readings that repeat exactly (filled in, or before the balance moved) is no proof of silence elsewhere. */
function withoutRepeats(contrasts: Float64Array): Float64Array {
  let moving = 0;
  for (let k = 0; k < contrasts.length; k++) if (contrasts[k] !== 0) moving++;
  if (moving === contrasts.length || 2 * moving < contrasts.length) return contrasts;
  return contrasts.filter((c) => c !== 0);
}
