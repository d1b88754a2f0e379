import type { Curve, Window } from './curve';
import type { Term } from './functional';
import { localNoise } from './localNoise';
import { localPolynomial } from './localPolynomial';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { extremesOver, pastLine, type Extremes } from './extremes';
import { passages, type Passage } from './passage';
import { samplesIn } from './range';
import { slopeAt, slopeCurve } from './slopeCurve';
import { steepest } from './steepest';

export interface CrossingOptions {
  /** The readings themselves, or the derived rate -dy/dt per s, loss positive. */
  readonly of: 'signal' | 'rate';
  /** A value in the unit of the signal, or a share of its largest or smallest value in the window. */
  readonly level: { readonly value: number } | { readonly share: number; readonly of: 'maximum' | 'minimum' };
  readonly way: 'rising' | 'falling' | 'either';
  readonly which: 'first' | 'last';
  /** Full width of the local polynomial, s: of the rate, and of the slope that turns noise into time. */
  readonly smooth: number | null;
  readonly noise: Noise | null;
  readonly propagate?: boolean;
}

export interface Crossing {
  readonly at: Measured;
  /** The level passed, in the unit of the signal. */
  readonly level: number;
  /** Single crossings the passage consists of; more than one where noise crosses to and fro. */
  readonly crossings: number;
  /** Whether the signal passed is a smoothed one: the rate is, readings never. */
  readonly smoothed: boolean;
  readonly readings: number;
  /** The level over the window, in the unit of the signal, and the passage. */
  readonly shapes: readonly CrossingShape[];
}

export type CrossingShape =
  | { readonly shape: 'line'; readonly role: 'level'; readonly points: readonly (readonly [number, number])[] }
  | { readonly shape: 'mark'; readonly quantity: string; readonly at: readonly [number, number] };

/** The signal must get beyond the level by so many sigma for a passage to count. */
const BAND = 3;

/**
 * When a signal passes a level inside a window. Readings are joined by straight lines and never smoothed: without noise
 * the answer is exact. With noise, crossings to and fro are one passage, that counts once the signal is beyond the level
 * by three sigma (of a reading, or of the rate), but at most half the way to the farthest value on that side; its time is
 * that of the middle crossing. The rate must besides stay on the new side for one width `smooth`: a single bad reading or
 * a jump of the balance makes a lobe of its derivative as long as that, and is no passage. A share of an extreme refers to the extreme inside the window; of the rate, to the rate at
 * the steepest point. Uncertainty: noise of signal and level over the slope. O(readings in the window). Null where the
 * signal never passes the level in that way.
 */
export function crossing(curve: Curve, window: Window, options: CrossingOptions): Crossing | null {
  return options.of === 'rate' ? crossingOfRate(curve, window, options) : crossingOfReadings(curve, window, options);
}

interface Level {
  readonly value: number;
  /** What of the level comes from readings. */
  readonly terms: readonly Term[];
}

function crossingOfReadings(curve: Curve, window: Window, options: CrossingOptions): Crossing | null {
  const { x, y } = curve;
  const { noise, propagate = true } = options;
  const { first, last } = samplesIn(x, window);
  const readings = last - first;
  if (readings < 2) return null;
  const level = levelOfReadings(y, first, last, options.level);
  const band = noise === null ? 0 : BAND * noise.sigma;
  const passage = chosen(
    passages(
      x,
      (i) => y[i] - level.value,
      first,
      last,
      narrowed(band, extremesOver(curve, { first, last }), level.value),
      0,
      (i, below) => pastLine(curve, i, below, { origin: level.value, slope: 0, centre: 0 }),
    ),
    options,
  );
  if (passage === null) return null;
  const { time, before, crossings } = passage;
  let u = 0;
  if (noise !== null && propagate) {
    const part = (time - x[before]) / (x[before + 1] - x[before]);
    const at: Term = { times: 1, of: { first: before, weights: Float64Array.of(1 - part, part) } };
    const speed = Math.abs(slopeAt(curve, time, options.smooth ?? 0, null).value);
    u = atMost(noiseOf(noise, x, [at, ...level.terms]) / speed, window);
  }
  const at = { value: time, noise: u, dof: noise?.dof ?? null };
  return { at, level: level.value, crossings, smoothed: false, readings, shapes: shapesOf(window, time, level.value) };
}

function levelOfReadings(y: Float64Array, first: number, last: number, at: CrossingOptions['level']): Level {
  if ('value' in at) return { value: at.value, terms: [] };
  let best = first;
  for (let i = first; i < last; i++) if (at.of === 'maximum' ? y[i] > y[best] : y[i] < y[best]) best = i;
  return { value: at.share * y[best], terms: [{ times: -at.share, of: { first: best, weights: Float64Array.of(1) } }] };
}

function crossingOfRate(curve: Curve, window: Window, options: CrossingOptions): Crossing | null {
  const { noise, propagate = true } = options;
  const inside = samplesIn(curve.x, window);
  const smooth = options.smooth ?? 0;
  const { x, slope, size } = slopeCurve(curve, window, smooth);
  if (x.length < 2) return null;
  const level = levelOfRate(curve, window, options, smooth);
  if (level === null) return null;
  const distance = (i: number): number => -slope[i] - level.value;
  const sought = (band: number): Passage | null =>
    chosen(passagesBeyond(x, distance, 0, x.length, band, smooth), options);
  const bandOf = (of: Noise | null, t: number): number =>
    of === null ? 0 : BAND * slopeAt(curve, t, smooth, of).noise;
  const band = bandOf(noise, x[x.length >> 1]);
  let passage = sought(band);
  // Once more where the readings scatter more about the passage than elsewhere.
  const near = noise && localNoise(noise, curve, passage?.time ?? x[0], smooth);
  if (passage !== null && near !== noise) passage = sought(Math.max(band, bandOf(near, passage.time))) ?? passage;
  if (passage === null) return null;
  const time = size > 1 ? refined(curve, x, passage, level.value, smooth) : passage.time;
  let u = 0;
  if (near !== null && propagate) {
    const fit = localPolynomial(curve, time, smooth, 3);
    const terms: Term[] = [{ times: -1, of: fit.functional(time, 1) }, ...level.terms];
    u = atMost(noiseOf(near, curve.x, terms) / Math.abs(bendAt(x, slope, passage.before)), window);
  }
  return {
    at: { value: time, noise: u, dof: noise?.dof ?? null },
    level: level.value,
    crossings: passage.crossings,
    smoothed: true,
    readings: inside.last - inside.first,
    shapes: shapesOf(window, time, level.value),
  };
}

function levelOfRate(curve: Curve, window: Window, options: CrossingOptions, smooth: number): Level | null {
  const at = options.level;
  if ('value' in at) return { value: at.value, terms: [] };
  const direction = at.of === 'maximum' ? 'falling' : 'rising';
  const { noise } = options;
  const extreme = steepest(curve, window, direction, { smooth, noise, propagate: false });
  if (extreme === null) return null;
  // The level is a share of minus the slope, and enters the distance with a minus.
  return { value: -at.share * extreme.slope.value, terms: [{ times: at.share, of: extreme.slopeFunctional }] };
}

/** The passage again with the rates of all readings, where the curve was found on averages. */
function refined(curve: Curve, x: Float64Array, passage: Passage, level: number, smooth: number): number {
  const [a, b] = [x[passage.before], x[passage.before + 1]];
  const [va, vb] = [a, b].map((t) => -slopeAt(curve, t, smooth, null).value - level);
  return va < 0 !== vb < 0 ? a + ((b - a) * va) / (va - vb) : passage.time;
}

/** Slope of the derivative about a passage, over four points where there are as many. */
function bendAt(x: Float64Array, slope: Float64Array, before: number): number {
  const a = Math.max(0, before - 1);
  const b = Math.min(x.length - 1, before + 2);
  return (slope[b] - slope[a]) / (x[b] - x[a]);
}

/** Passages with a band that is never more than half of what the signal reaches on either side. */
function passagesBeyond(
  x: Float64Array,
  distance: (i: number) => number,
  first: number,
  last: number,
  band: number,
  hold = 0,
): Passage[] {
  let most = -Infinity;
  let least = Infinity;
  for (let i = first; i < last; i++) {
    const d = distance(i);
    if (d > most) most = d;
    if (d < least) least = d;
  }
  return passages(x, distance, first, last, narrowed(band, { least, most }, 0), hold);
}

/** A band that is never more than half of what the signal reaches on either side of a level. */
function narrowed(band: number, { least, most }: Extremes, level: number): number {
  return Math.min(band, Math.max(0, most - level) / 2, Math.max(0, level - least) / 2);
}

function chosen(all: readonly Passage[], { way, which }: CrossingOptions): Passage | null {
  const fitting = all.filter((p) => way === 'either' || p.direction === way);
  return fitting.length === 0 ? null : fitting[which === 'first' ? 0 : fitting.length - 1];
}

function shapesOf(window: Window, time: number, level: number): readonly CrossingShape[] {
  return [
    { shape: 'line', role: 'level', points: [window.from, window.to].map((t) => [t, level] as const) },
    { shape: 'mark', quantity: 'temperature', at: [time, level] },
  ];
}

function atMost(noise: number, window: Window): number {
  const widest = (window.to - window.from) / Math.sqrt(12);
  return Number.isFinite(noise) ? Math.min(noise, widest) : widest;
}
