import type { Curve, Window } from './curve';
import { movingMean, type HeatProfile } from './heatProfile';
import { noiseOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { samplesAround } from './range';
import { timeBlocks } from './timeBlocks';

/** One peak of a window that may hold several. */
export interface Lobe {
  readonly window: Window;
  readonly direction: 1 | -1;
}

export type EffectKind = { readonly kind: 'glass' } | { readonly kind: 'peaks'; readonly lobes: readonly Lobe[] };

/** A step whose overshoot (relaxation) is at most so many times the step, and whose undershoot so small, is glass. */
const OVERSHOOT = 2;
const UNDERSHOOT = 0.25;
/** A glass step is surer than this, and its steep part no longer than so many spans. */
const SURE = 5;
const LONGEST = 6;
/** Two lobes of one sign are two peaks where the curve between falls below this share of the smaller. */
const VALLEY = 0.2;
/** A lobe is worth a peak from this share of the largest on. */
const WORTH = 0.03;

/**
 * What a window that ends in the middle of straight stretches holds. The lines of both stretches are carried on to
 * between them: a curve that goes up from the first to the second and hardly leaves the band between them is a glass
 * step, with the relaxation peak it may carry on its upper side; what leaves the band is peaks. Null where nothing does.
 */
export function kindOfEffect(curve: Curve, window: Window, span: number, noise: Noise): EffectKind | null {
  const { x, y } = curve;
  const line = (t: number) => {
    const { first, last } = samplesAround(x, t, span, 3);
    return fitPolynomial(x, y, first, last, 1);
  };
  const before = line(window.from);
  const after = line(window.to);
  const range = samplesAround(x, (window.from + window.to) / 2, window.to - window.from, 3);
  const blocks = timeBlocks(x, y, range, span / 40, window.from);
  const averaged = movingMean({ x: blocks.x, d: blocks.y }, span / 10);
  const off = beyondBand(averaged, (t) => [before.at(t), after.at(t)]);
  let above = 0;
  let below = 0;
  for (const d of off.d) {
    above = Math.max(above, d);
    below = Math.max(below, -d);
  }
  const middle = steepMiddle(averaged);
  const gap = after.at(middle) - before.at(middle);
  const u = noiseOf(noise, x, [
    { times: 1, of: after.functional(middle) },
    { times: -1, of: before.functional(middle) },
  ]);
  const long = window.to - window.from - span > LONGEST * span;
  if (gap > SURE * u && above < OVERSHOOT * gap && below < UNDERSHOOT * gap && !long) return { kind: 'glass' };
  const lobes = lobesOf(off, window, Math.max(above, below));
  return lobes.length > 0 ? { kind: 'peaks', lobes } : null;
}

/** How far a profile lies outside the band between two lines; 0 inside. */
function beyondBand({ x, d }: HeatProfile, lines: (t: number) => [number, number]): HeatProfile {
  return {
    x,
    d: d.map((value, k) => {
      const [a, b] = lines(x[k]);
      const [low, high] = a < b ? [a, b] : [b, a];
      return value > high ? value - high : value < low ? value - low : 0;
    }),
  };
}

/** Where the profile is halfway between its ends' values, next to its steepest rise. */
function steepMiddle({ x, d }: HeatProfile): number {
  let best = 1;
  for (let k = 1; k < d.length; k++) if (d[k] - d[k - 1] > d[best] - d[best - 1]) best = k;
  return (x[best] + x[best - 1]) / 2;
}

/** Cuts a profile where its sign changes and where it falls low between two summits of one sign. */
function lobesOf({ x, d }: HeatProfile, window: Window, largest: number): readonly Lobe[] {
  const summits = summitsOf(d, WORTH * largest);
  const lobes: Lobe[] = [];
  let from = window.from;
  summits.forEach((summit, i) => {
    const next = summits[i + 1];
    const to = next === undefined ? window.to : x[lowestBetween(d, summit, next)];
    lobes.push({ window: { from, to }, direction: d[summit] > 0 ? 1 : -1 });
    from = to;
  });
  return lobes;
}

/** Indices of the summits, ascending, one for each lobe. */
function summitsOf(d: Float64Array, least: number): number[] {
  const summits: number[] = [];
  for (let k = 0; k < d.length; k++) {
    if (Math.abs(d[k]) < least) continue;
    const last = summits[summits.length - 1];
    if (last === undefined || isValley(d, last, k)) summits.push(k);
    else if (Math.abs(d[k]) > Math.abs(d[last])) summits[summits.length - 1] = k;
  }
  return summits;
}

/** Whether between two places of a profile its sign changes, or it falls below a share of the lower of both. */
function isValley(d: Float64Array, a: number, b: number): boolean {
  if (d[a] > 0 !== d[b] > 0) return true;
  const low = d[lowestBetween(d, a, b)];
  return Math.abs(low) < VALLEY * Math.min(Math.abs(d[a]), Math.abs(d[b]));
}

/** Between summits of one sign the lowest place; between opposite signs the place where the curve passes the band. */
function lowestBetween(d: Float64Array, a: number, b: number): number {
  let lowest = a;
  for (let k = a; k <= b; k++) if (Math.abs(d[k]) < Math.abs(d[lowest])) lowest = k;
  return lowest;
}
