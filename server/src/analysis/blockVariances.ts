import { blockMeans } from './blockMeans';
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
  let means: { x: Float64Array; y: Float64Array } = { x: x.subarray(first, last), y: y.subarray(first, last) };
  for (let size = 1; size === 1 || size * interval <= longest; size *= 2) {
    if (size > 1) means = blockMeans(means.x, means.y, { first: 0, last: means.x.length & ~1 }, 2);
    const { variance, kept } = clippedVariance(withoutRepeats(contrastsOf(means.x, means.y, size * interval, most)));
    const count = kept / OVERLAP;
    if (count < FEWEST && variances.length > 0) break;
    variances.push({ size, variance, count });
  }
  return variances;
}

function contrastsOf(x: Float64Array, y: Float64Array, usual: number, most: number): Float64Array {
  const stride = Math.max(1, Math.floor(x.length / most));
  const contrasts = new Float64Array(Math.ceil(x.length / stride));
  const more = CONTRAST.length - 1;
  let n = 0;
  for (let k = 0; k + more < x.length; k += stride) {
    // Across a gap the block means are no neighbours.
    if (x[k + more] - x[k] > 1.5 * more * usual) continue;
    let sum = 0;
    for (let j = 1; j <= more; j++) sum += CONTRAST[j] * (y[k + j] - y[k]);
    contrasts[n++] = sum;
  }
  return contrasts.subarray(0, n);
}

/** A stretch of readings that repeat exactly (filled in, or before the balance moved) is no proof of silence elsewhere. */
function withoutRepeats(contrasts: Float64Array): Float64Array {
  const moving = contrasts.filter((c) => c !== 0);
  return 2 * moving.length >= contrasts.length ? moving : contrasts;
}
