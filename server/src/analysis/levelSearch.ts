import { blockMeans } from './blockMeans';
import type { Curve, Window } from './curve';
import { noiseOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { firstAfter, firstAtOrAfter, samplesAround, samplesIn } from './range';
import { slopeAt, slopeCurve } from './slopeCurve';

export interface LevelSearchOptions {
  /** Length of the level stretch looked for, s. */
  readonly span: number;
  /** Slope up to which a stretch is level, unit of mass per s. */
  readonly levelSlope: number;
  /** And as a share of the largest rate passed. */
  readonly relativeRate: number;
  /** Full width of the derivative's local polynomial, s. */
  readonly smooth: number;
}

/** Grid points in one span. */
const STEPS = 20;
/** The slope of a stretch is known well enough when its noise is this share of the limit; else it is judged on more. */
const KNOWN = 0.1;
const LONGEST = 4;
/** A rate is a step's when it exceeds the level slope and so many of its uncertainties. */
const CERTAIN = 6;

/** What a walk along a curve needs: slopes of stretches and rates, on a grid. */
export interface LevelSearch {
  readonly grid: Float64Array;
  /** Slope of the stretch centred on each grid point. */
  readonly slope: Float64Array;
  /** Largest absolute rate between neighbouring grid points up to this one. */
  readonly rate: Float64Array;
  /** Below it a rate is none. */
  readonly least: number;
  /** Slope up to which a stretch is level by its definition, after so large a rate was passed. */
  plain(passed: number): number;
  /** The same, not less than what noise lets be seen. */
  limit(passed: number): number;
  /** Whether the stretch at a grid point is level, after so large a rate was passed. */
  level(index: number, passed: number): boolean;
}

/**
 * Slopes of stretches on a grid over a part of a curve, on averages of about a twentieth of a span. Where noise hides the
 * level slope, a stretch is judged on up to four spans around the same middle: only so do the ends of windows stand still
 * from one run to the next. Where even that does not help, it counts as level within two of its uncertainties.
 */
export function levelSearch(curve: Curve, part: Window, noise: Noise, options: LevelSearchOptions): LevelSearch | null {
  const { x } = curve;
  const { span, levelSlope, relativeRate, smooth } = options;
  const range = samplesIn(x, part);
  if (range.last - range.first < 8) return null;
  const interval = (x[range.last - 1] - x[range.first]) / (range.last - 1 - range.first);
  const size = Math.max(1, Math.floor(span / STEPS / interval));
  const means = blockMeans(x, curve.y, range, size);
  const middle = x[(range.first + range.last) >> 1];
  let width = span;
  let unsure = stretchNoise(curve, middle, width, noise);
  const known = KNOWN * levelSlope;
  if (unsure > known) {
    width = span * Math.min(LONGEST, (unsure / known) ** (2 / 3));
    unsure = stretchNoise(curve, middle, width, noise);
  }
  const from = x[range.first] + span / 2;
  const to = x[range.last - 1] - span / 2;
  const step = Math.max(span / STEPS, interval);
  const count = Math.floor((to - from) / step) + 1;
  if (!(count > 1)) return null;
  const grid = Float64Array.from({ length: count }, (_, i) => from + i * step);
  const slope = grid.map((t) => {
    const { first, last } = samplesAround(means.x, t, width, 3);
    return fitPolynomial(means.x, means.y, first, last, 1).at(t, 1);
  });
  const rates = slopeCurve(curve, part, smooth);
  const rate = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const a = firstAtOrAfter(rates.x, grid[i] - step);
    const b = Math.max(a + 1, firstAfter(rates.x, grid[i]));
    for (let j = a; j < b && j < rates.x.length; j++) rate[i] = Math.max(rate[i], Math.abs(rates.slope[j]));
  }
  const plain = (passed: number): number => Math.min(levelSlope, relativeRate * passed);
  const limit = (passed: number): number => Math.max(plain(passed), 2 * unsure);
  return {
    grid,
    slope,
    rate,
    least: Math.max(levelSlope, CERTAIN * slopeAt(curve, middle, smooth, noise).noise),
    plain,
    limit,
    level: (i, passed) => Math.abs(slope[i]) <= limit(passed),
  };
}

function stretchNoise(curve: Curve, at: number, width: number, noise: Noise): number {
  const { first, last } = samplesAround(curve.x, at, width, 3);
  const fit = fitPolynomial(curve.x, curve.y, first, last, 1);
  return noiseOf(noise, curve.x, [{ times: 1, of: fit.functional(at, 1) }]);
}
