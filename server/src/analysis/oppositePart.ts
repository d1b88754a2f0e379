import type { Baseline } from './baseline';
import type { Curve } from './curve';
import type { HeatProfile, Outline } from './heatProfile';
import { noiseOf, type Noise } from './noise';
import { meanFunctional } from './functional';
import { samplesIn } from './range';

/** The largest stretch of the curve on the far side of the baseline. */
export interface OppositePart {
  readonly from: number;
  readonly to: number;
  /** Area between curve and baseline there, signed, unit of y times s, over the area of the other side, unsigned. */
  readonly area: number;
  readonly ofArea: number;
  /** Greatest distance there, unit of y, unsigned; over the height; over its noise. */
  readonly depth: number;
  readonly ofHeight: number;
  readonly sigmas: number;
  /** Whether the baseline crosses the curve: more than noise does, and more than a hundredth of the height. */
  readonly crosses: boolean;
}

/** Excursions are looked for at a thousand places; noise alone stays within so many sigma of all of them. */
const SURE = 5;
const MATERIAL = 0.01;

/** Null where the curve nowhere goes to the far side. Averages are compared: `averaged` is the curve less the
 * baseline, averaged over about an eighth of the effect's width. */
export function oppositePart(
  curve: Curve,
  baseline: Baseline,
  averaged: HeatProfile,
  outline: Outline,
  noise: Noise,
): OppositePart | null {
  const { x, d } = averaged;
  const off = (p: number): number => -outline.direction * d[p];
  let deepest = 0;
  for (let p = 1; p < x.length; p++) if (off(p) > off(deepest)) deepest = p;
  const depth = off(deepest);
  if (!(depth > 0)) return null;
  let first = deepest;
  let last = deepest;
  while (first > 0 && off(first - 1) > 0) first--;
  while (last < x.length - 1 && off(last + 1) > 0) last++;
  const [from, to] = [x[first], x[last]];
  let area = 0;
  let whole = 0;
  for (let p = 1; p < x.length; p++) {
    const strip = ((d[p] + d[p - 1]) / 2) * (x[p] - x[p - 1]);
    whole += strip;
    if (p > first && p <= last) area += strip;
  }
  const rest = Math.abs(whole - area);
  const width = (outline.halfRight - outline.halfLeft) / 8;
  const near = samplesIn(curve.x, { from: x[deepest] - width / 2, to: x[deepest] + width / 2 });
  const start = Math.min(near.first, curve.x.length - 1);
  const u = noiseOf(noise, curve.x, [
    { times: 1, of: meanFunctional(start, Math.max(start + 1, near.last)) },
    ...baseline.termsAt(x[deepest]).map(({ times, of }) => ({ times: -times, of })),
  ]);
  const sigmas = u > 0 ? depth / u : Infinity;
  const ofHeight = depth / Math.abs(outline.height);
  return {
    from,
    to,
    area,
    ofArea: rest > 0 ? Math.abs(area) / rest : Infinity,
    depth,
    ofHeight,
    sigmas,
    crosses: sigmas > SURE && ofHeight > MATERIAL,
  };
}
