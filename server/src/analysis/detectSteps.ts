import { walkOut } from './aroundStep';
import type { Curve, Window } from './curve';
import { meanFunctional, type Term } from './functional';
import { levelAt, stretchSlope } from './level';
import { levelSearch, type LevelSearchOptions } from './levelSearch';
import { localNoise } from './localNoise';
import { noiseOf, silent, type Noise } from './noise';
import { prominent } from './rateMaxima';
import { slopeAt, slopeCurve } from './slopeCurve';

export interface DetectStepsOptions extends LevelSearchOptions {
  /** Smallest change of mass worth proposing, unit of mass. */
  readonly least: number;
}

export interface DetectedStep {
  readonly window: Window;
  /** Time of the largest rate. */
  readonly at: number;
  /** Start less end: a loss is positive. */
  readonly change: number;
  /** An end that is the end of the data, because the curve gets level nowhere before. */
  readonly open: boolean;
}

/** A rate must exceed so many of its uncertainties, a change so many of its own, to be proposed. */
const RATE = 8;
const CHANGE = 5;
/** At least so many times the step to which readings are rounded. */
const ROUNDED = 4;
/** A step cut off by an end of the data must be so many times as large. */
const OPEN = 10;

/**
 * Proposes windows of mass steps in a curve (one segment), in order of time, for a draft that a person then checks.
 *
 * A step is a maximum of the rate, clear of the noise there and above the level slope, whose window reaches a level stretch
 * on both sides (the rule of `aroundStep`; a large step may end with the data instead, which is said), and across which the
 * mass changes by more than noise, rounding and the drift of both levels explain. Two reactions whose minimum
 * rate between them is no level are proposed as one window: where to part them is nothing the curve tells. Windows do not
 * overlap; where two meet on one plateau both end in its middle.
 */
export function detectSteps(curve: Curve, noise: Noise | null, options: DetectStepsOptions): DetectedStep[] {
  const { x } = curve;
  const whole = { from: x[0], to: x[x.length - 1] };
  const known = noise ?? silent;
  const search = levelSearch(curve, whole, known, options);
  if (search === null) return [];
  const found: DetectedStep[] = [];
  for (const at of candidates(curve, whole, known, options)) {
    if (found.some((f) => f.window.from <= at && at <= f.window.to)) continue;
    const closed = walkOut(search, at, Infinity);
    const window = closed ?? walkOut(search, at, Infinity, true);
    if (window === null || found.some((f) => covers(f.window, window))) continue;
    const least = closed === null ? OPEN * options.least : options.least;
    const change = changeAcross(curve, window, known, options.span, least);
    if (change !== null) found.push({ window, at, change, open: closed === null });
  }
  found.sort((a, b) => a.at - b.at);
  return apart(found);
}

/** Times of the maxima of the rate that noise does not make, the largest first. */
function candidates(curve: Curve, whole: Window, noise: Noise, options: DetectStepsOptions): number[] {
  const { x, slope } = slopeCurve(curve, whole, options.smooth);
  const size = slope.map(Math.abs);
  const unsure = slopeAt(curve, x[x.length >> 1], options.smooth, noise).noise;
  const least = Math.max(options.levelSlope, RATE * unsure);
  return prominent(size, least / 2)
    .filter((i) => i > 0 && i < x.length - 1 && size[i] > least)
    .filter((i) => {
      const near = localNoise(noise, curve, x[i], options.smooth);
      return near === noise || size[i] > RATE * slopeAt(curve, x[i], options.smooth, near).noise;
    })
    .sort((a, b) => size[b] - size[a])
    .map((i) => x[i]);
}

/** The change between both levels; null where noise, rounding or the slopes of the levels explain it. */
function changeAcross(curve: Curve, window: Window, noise: Noise, span: number, least: number): number | null {
  const from = levelAt(curve, window.from, span);
  const to = levelAt(curve, window.to, span);
  const drift = (stretchSlope(curve, from.range, null).value + stretchSlope(curve, to.range, null).value) / 2;
  const change = from.at(window.from) - to.at(window.to);
  const beyondDrift = change + drift * (window.to - window.from);
  const terms: Term[] = [
    { times: 1, of: meanFunctional(from.range.first, from.range.last) },
    { times: -1, of: meanFunctional(to.range.first, to.range.last) },
  ];
  // Shorter than one stretch it is a jump of the balance.
  if (window.to - window.from < span) return null;
  const unsure = Math.max(CHANGE * noiseOf(noise, curve.x, terms), ROUNDED * noise.resolution, least);
  return Math.min(Math.abs(change), Math.abs(beyondDrift)) > unsure ? change : null;
}

function covers(outer: Window, inner: Window): boolean {
  return outer.from <= inner.from && inner.to <= outer.to;
}

/** Windows that meet end in the middle of what they share. */
function apart(steps: readonly DetectedStep[]): DetectedStep[] {
  const result = [...steps];
  for (let i = 1; i < result.length; i++) {
    const [a, b] = [result[i - 1], result[i]];
    if (a.window.to <= b.window.from) continue;
    const middle = (a.window.to + b.window.from) / 2;
    result[i - 1] = { ...a, window: { from: a.window.from, to: middle } };
    result[i] = { ...b, window: { from: middle, to: b.window.to } };
  }
  return result;
}
