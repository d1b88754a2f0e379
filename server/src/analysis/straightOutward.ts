import { varianceOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { quantile } from './robust';
import { noiseOfTimeBlocks, type TimeBlocks } from './timeBlocks';

/** A run of blocks that is straight: the end of an effect. */
export interface StraightRun {
  /** Blocks `first` to `last` (exclusive). */
  readonly first: number;
  readonly last: number;
  /** Middle of the run, s. */
  readonly middle: number;
}

export interface StraightRule {
  /** Blocks a run needs. */
  readonly length: number;
  readonly noise: Noise;
  /** A departure smaller than this (unit of y) is none. */
  readonly floor: number;
}

/** Standard deviations that count as a departure (language: "straight within 3 sigma"). */
const DEPARTURE = 3;
/** A run flatter than this share of the steepest slope passed is no flank. */
const FLANK = 0.15;
/** The usual slope is the median over so many run lengths to both sides. */
const USUAL = 6;

/** Looks for the ends of effects in a row of block means. */
export class StraightOutward {
  private readonly noise: Noise;
  /** Standard uncertainty of a block's distance from the line through its run, by position in the run. */
  private readonly allowed: Float64Array;
  private readonly slopes: Float64Array;

  constructor(
    private readonly blocks: TimeBlocks,
    private readonly rule: StraightRule,
  ) {
    this.noise = noiseOfTimeBlocks(rule.noise, blocks);
    this.allowed = this.uncertainties();
    this.slopes = neighbourSlopes(blocks);
  }

  /**
   * The first straight run from block `start` on, outward: straight within three standard deviations and not steeper
   * than a seventh of the steepest slope between `start` and the run, counted from the slope usual around `start`, since a
   * zero line may be tilted. Null where none begins before the block `limit` (exclusive when ascending, the last one looked
   * at when descending).
   */
  find(start: number, side: 1 | -1, limit: number): StraightRun | null {
    const { length } = this.rule;
    const tilt = this.usualSlope(start);
    let passed = this.steepestNear(start, tilt);
    for (let at = start; side > 0 ? at + length <= limit : at - length >= limit; at += side) {
      const first = side > 0 ? at : at - length;
      const k = side > 0 ? at : at - 1;
      if (this.isStraight(first, passed, tilt)) {
        const { x } = this.blocks;
        return { first, last: first + length, middle: (x[first] + x[first + length - 1]) / 2 };
      }
      if (k >= 0 && k < this.slopes.length) passed = Math.max(passed, Math.abs(this.slopes[k] - tilt));
    }
    return null;
  }

  private steepestNear(block: number, tilt: number): number {
    const reach = this.rule.length >> 1;
    let steepest = 0;
    for (let k = Math.max(0, block - reach); k < Math.min(this.slopes.length, block + reach); k++) {
      steepest = Math.max(steepest, Math.abs(this.slopes[k] - tilt));
    }
    return steepest;
  }

  private usualSlope(block: number): number {
    const reach = USUAL * this.rule.length;
    return quantile(this.slopes.subarray(Math.max(0, block - reach), block + reach), 0.5);
  }

  private isStraight(first: number, passed: number, tilt: number): boolean {
    const { x, y, counts } = this.blocks;
    const { length, floor } = this.rule;
    const line = fitPolynomial(x, y, first, first + length, 1, counts);
    if (Math.abs(line.at(x[first], 1) - tilt) > FLANK * passed) return false;
    for (let k = 0; k < length; k++) {
      if (Math.abs(y[first + k] - line.at(x[first + k])) > floor + DEPARTURE * this.allowed[k]) return false;
    }
    return true;
  }

  /** The blocks are much alike, so the uncertainties of one run serve for all. */
  private uncertainties(): Float64Array {
    const { x, y, counts } = this.blocks;
    const { length } = this.rule;
    const first = Math.max(0, (x.length - length) >> 1);
    const n = Math.min(length, x.length - first);
    const line = fitPolynomial(x, y, first, first + n, 1, counts);
    return Float64Array.from({ length }, (_, k) => {
      const at = first + Math.min(k, n - 1);
      const { weights } = line.functional(x[at]);
      const residual = Float64Array.from(weights, (w, i) => (first + i === at ? 1 - w : -w));
      return Math.sqrt(varianceOf(this.noise, x, [{ first, weights: residual }]));
    });
  }
}

/** Slope from each block to the next but one: neighbours alone are mostly noise. */
function neighbourSlopes({ x, y }: TimeBlocks): Float64Array {
  const n = x.length;
  return Float64Array.from({ length: n }, (_, k) => {
    const from = Math.max(0, k - 1);
    const to = Math.min(n - 1, k + 2);
    return to > from ? (y[to] - y[from]) / (x[to] - x[from]) : 0;
  });
}
