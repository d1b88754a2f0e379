import { CONTRAST, type BlockVariance } from './noiseModel';
import type { SampleRange } from './range';
import { clippedVariance } from './robust';

/** Independent numbers at least for a variance to count. */
const FEWEST = 12;
/** Neighbouring fifth differences overlap; so many are worth one independent (sum of the squared correlations). */
const OVERLAP = 2.91;

/**
 * Robust variances of the contrasts of neighbouring block means, for blocks of 1, 2, 4, … readings up to `longest` s
 * (and while there are enough of them). At most `most` contrasts of each length are looked at, evenly spread.
 */
export function blockVariances(
  x: Float64Array,
  y: Float64Array,
  { first, last }: SampleRange,
  interval: number,
  longest: number,
  most: number,
): BlockVariance[] {
  const variances: BlockVariance[] = [];
  let means: Means = { x: x.subarray(first, last), y: y.subarray(first, last) };
  for (let size = 1; size === 1 || size * interval <= longest; size *= 2) {
    if (size > 1) means = pairsOf(means);
    const { variance, kept } = clippedVariance(withoutRepeats(contrastsOf(means.x, means.y, size * interval, most)));
    const count = kept / OVERLAP;
    if (count < FEWEST && variances.length > 0) break;
    variances.push({ size, variance, count });
  }
  return variances;
}

interface Means {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** The means of neighbours, two by two: blocks of twice as many readings. One that is left over is left out. */
function pairsOf({ x, y }: Means): Means {
  const half = x.length >> 1;
  const px = new Float64Array(half);
  const py = new Float64Array(half);
  for (let k = 0, i = 0; k < half; k++, i += 2) {
    px[k] = x[i] + (x[i + 1] - x[i]) * 0.5;
    py[k] = y[i] + (y[i + 1] - y[i]) * 0.5;
  }
  return { x: px, y: py };
}

function contrastsOf(x: Float64Array, y: Float64Array, usual: number, most: number): Float64Array {
  const weights = CONTRAST;
  const stride = Math.max(1, Math.floor(x.length / most));
  const contrasts = new Float64Array(Math.ceil(x.length / stride));
  const more = weights.length - 1;
  const longest = 1.5 * more * usual;
  let n = 0;
  for (let k = 0; k + more < x.length; k += stride) {
    // Across a gap the block means are no neighbours.
    if (x[k + more] - x[k] > longest) continue;
    let sum = 0;
    for (let j = 1; j <= more; j++) sum += weights[j] * (y[k + j] - y[k]);
    contrasts[n++] = sum;
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
