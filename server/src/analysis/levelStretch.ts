import { timeBlocks, noiseOfTimeBlocks, type TimeBlocks } from './timeBlocks';
import type { Curve } from './curve';
import { varianceOf, type Noise } from './noise';
import { fitPolynomial, type PolynomialFit } from './polynomialFit';
import { firstAfter, firstAtOrAfter, samplesAround, type SampleRange } from './range';

/** Where to look for the level stretch at a limit, and what counts as straight. */
export interface StretchRule {
  /** The limit, seconds. */
  readonly limit: number;
  /** 1: the window lies after the limit; -1: before it. */
  readonly inward: 1 | -1;
  /** How far the stretch may reach into the window and out of it, seconds. */
  readonly inside: number;
  readonly outside: number;
  /** Length wanted in all: the stretch grows outward only as far as the inside leaves of it. */
  readonly span: number;
  readonly noise: Noise;
  /** A departure smaller than this (unit of y) is none, for curves without noise. */
  readonly floor: number;
}

export interface LevelStretch {
  readonly first: number;
  readonly last: number;
  /** The straight line through the stretch. */
  readonly line: PolynomialFit;
  /** Length into the window and out of it, seconds. */
  readonly inside: number;
  readonly outside: number;
  /** Whether anything level was found at all: else the line is a chord through the samples next to the limit. */
  readonly level: boolean;
}

/** Parts of `span` in which straightness is judged. */
const PARTS = 10;
/** Standard deviations that count as a departure (language: "straight within 3 sigma"). */
const DEPARTURE = 3;
/** Blocks are of nearly equal length. */
const TOLERANCE = 1.05;

/**
 * The level stretch at a limit of a window of heat flow: the curve beside the limit as far as it is straight within
 * three standard deviations, at most `span` long. It grows part by part (a tenth of the span each) from the limit into
 * the window, then out of it; a part whose mean leaves the line through the parts before it ends that side, and the part
 * before it, in which the effect began unseen, is given up as well.
 */
export function levelStretch(curve: Curve, rule: StretchRule): LevelStretch {
  const { limit, inward } = rule;
  const left = inward > 0 ? rule.outside : rule.inside;
  const right = inward > 0 ? rule.inside : rule.outside;
  const first = firstAtOrAfter(curve.x, limit - left);
  const last = firstAfter(curve.x, limit + right, first);
  const blocks = timeBlocks(curve.x, curve.y, { first, last }, rule.span / PARTS, limit);
  const growth = new Growth(blocks, noiseOfTimeBlocks(rule.noise, blocks), rule);
  const grown = growth.run();
  if (grown === null) return chord(curve, rule);
  const from = blocks.bounds[grown.first];
  const to = blocks.bounds[grown.last];
  const before = Math.max(0, limit - curve.x[from]);
  const after = Math.max(0, curve.x[to - 1] - limit);
  return {
    first: from,
    last: to,
    line: fitPolynomial(curve.x, curve.y, from, to, 1),
    inside: inward > 0 ? after : before,
    outside: inward > 0 ? before : after,
    level: true,
  };
}

/** Nothing level: the limit lies on a flank. The samples within one part give the value of the curve there, two at least. */
function chord(curve: Curve, { limit, inward, span }: StretchRule): LevelStretch {
  const { first, last } = samplesAround(curve.x, limit, span / PARTS, 2);
  const before = Math.max(0, limit - curve.x[first]);
  const after = Math.max(0, curve.x[last - 1] - limit);
  return {
    first,
    last,
    line: fitPolynomial(curve.x, curve.y, first, last, 1),
    inside: inward > 0 ? after : before,
    outside: inward > 0 ? before : after,
    level: false,
  };
}

class Growth {
  /** Number of the first block that begins at or after the limit. */
  private readonly border: number;

  constructor(
    private readonly blocks: TimeBlocks,
    private readonly noise: Noise,
    private readonly rule: StretchRule,
  ) {
    this.border = firstAtOrAfter(blocks.x, rule.limit);
  }

  run(): SampleRange | null {
    const base = this.base();
    if (base === null) return null;
    const ascending = this.rule.inward > 0;
    const grown = this.grow(this.grow(base, ascending), !ascending);
    let { first, last } = grown;
    // Outside keeps no more than the inside leaves of the span, the farthest is given back first.
    while (last - first > 3 && this.length(first, last) > TOLERANCE * this.rule.span) {
      if (!(ascending ? first < this.border : last > this.border)) break;
      if (ascending) first++;
      else last--;
    }
    return { first, last };
  }

  /** Three parts in a row at the limit that are straight: astride if they are, else inside, else outside. */
  private base(): SampleRange | null {
    const n = this.blocks.x.length;
    const { inward } = this.rule;
    for (const outside of [2, 1, 0, 3]) {
      const first = inward > 0 ? this.border - outside : this.border + outside - 3;
      if (first < 0 || first + 3 > n) continue;
      if (
        this.follows({ first, last: first + 2 }, first + 2) &&
        this.follows({ first: first + 1, last: first + 3 }, first)
      ) {
        return { first, last: first + 3 };
      }
    }
    return null;
  }

  private grow(start: SampleRange, ascending: boolean): SampleRange {
    let { first, last } = start;
    const into = ascending === this.rule.inward > 0;
    for (;;) {
      const next = ascending ? last : first - 1;
      if (next < 0 || next >= this.blocks.x.length) return { first, last };
      if (!into && this.length(Math.min(first, next), Math.max(last, next + 1)) > this.rule.span)
        return { first, last };
      if (!this.follows({ first, last }, next)) break;
      if (ascending) last++;
      else first--;
    }
    if (last - first > start.last - start.first)
      return ascending ? { first, last: last - 1 } : { first: first + 1, last };
    return { first, last };
  }

  private length(first: number, last: number): number {
    const { x } = this.blocks;
    return x[last - 1] - x[first] + this.rule.span / PARTS;
  }

  /** Whether a part lies on the line through the accepted parts, within what noise can do. */
  private follows({ first, last }: SampleRange, part: number): boolean {
    const { x, y, counts } = this.blocks;
    const line = fitPolynomial(x, y, first, last, 1, counts);
    const off = Math.abs(y[part] - line.at(x[part]));
    if (off <= this.rule.floor) return true;
    const predicted = line.functional(x[part]);
    const own = { first: part, weights: Float64Array.of(-1) };
    const pieces = part < first ? [own, predicted] : [predicted, own];
    return off <= this.rule.floor + DEPARTURE * Math.sqrt(varianceOf(this.noise, x, pieces));
  }
}
