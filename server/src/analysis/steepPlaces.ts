import { noiseOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { noiseOfTimeBlocks, type TimeBlocks } from './timeBlocks';
import { quantile } from './robust';

/** A place where a signal is steeper than its surroundings. */
export interface SteepPlace {
  /** Block in the middle. */
  readonly block: number;
  /** Rise over the stretch beyond that of the surroundings, unit of y. */
  readonly rise: number;
  readonly sigmas: number;
}

/** Lengths of the stretches compared, in blocks. */
const LENGTHS = [3, 6, 12, 24, 48];
/** Where to look: what is no steeper than so many standard deviations is not looked at. */
const WORTH_A_LOOK = 4;
/** Surroundings: so many lengths to both sides, at least so many blocks. */
const AROUND = 5;
const AROUND_LEAST = 40;

/**
 * Places where heat effects may be: stretches whose slope differs from the median slope around them by more than noise
 * does, the largest rise first. A smooth zero line is as steep as its surroundings and is no such place.
 */
export function steepPlaces(blocks: TimeBlocks, noise: Noise): SteepPlace[] {
  const { x, y, counts } = blocks;
  const n = x.length;
  const own = noiseOfTimeBlocks(noise, blocks);
  const places: SteepPlace[] = [];
  for (const length of LENGTHS) {
    if (n < 3 * length) break;
    const slopes = Float64Array.from({ length: n - length + 1 }, (_, k) =>
      fitPolynomial(x, y, k, k + length, 1, counts).at(x[k], 1),
    );
    const middle = (n - length) >> 1;
    const typical = fitPolynomial(x, y, middle, middle + length, 1, counts);
    const u = noiseOf(own, x, [{ times: 1, of: typical.functional(x[middle], 1) }]);
    const reach = Math.max(AROUND * length, AROUND_LEAST);
    const stride = Math.max(1, length >> 1);
    const usual = Float64Array.from({ length: Math.ceil(slopes.length / stride) }, (_, k) =>
      medianAround(slopes, k * stride, reach),
    );
    const excess = slopes.map((slope, k) => slope - usual[Math.floor(k / stride)]);
    for (let k = 0; k < excess.length; k++) {
      const size = Math.abs(excess[k]);
      if (!(size > WORTH_A_LOOK * u) || !isLargestNear(excess, k, length)) continue;
      const span = x[k + length - 1] - x[k];
      places.push({
        block: k + (length >> 1),
        rise: excess[k] * span,
        sigmas: u > 0 ? size / u : Infinity,
      });
    }
  }
  return places.sort((a, b) => Math.abs(b.rise) - Math.abs(a.rise));
}

function medianAround(slopes: Float64Array, at: number, reach: number): number {
  const first = Math.max(0, at - reach);
  const last = Math.min(slopes.length, at + reach + 1);
  const stride = Math.max(1, Math.floor((last - first) / 40));
  const some: number[] = [];
  for (let k = first; k < last; k += stride) some.push(slopes[k]);
  return quantile(Float64Array.from(some), 0.5);
}

function isLargestNear(values: Float64Array, at: number, reach: number): boolean {
  for (let k = Math.max(0, at - reach); k < Math.min(values.length, at + reach + 1); k++) {
    const size = Math.abs(values[k]);
    if (size > Math.abs(values[at]) || (size === Math.abs(values[at]) && k < at)) return false;
  }
  return true;
}
