import type { Baseline } from './baseline';
import type { Curve } from './curve';
import type { HeatProfile, Outline } from './heatProfile';
import { localPolynomial } from './localPolynomial';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { firstAfter } from './range';

export interface Leaving {
  readonly curve: Curve;
  readonly noise: Noise;
  readonly baseline: Baseline;
  /** Curve less baseline, averaged over a short width. */
  readonly averaged: HeatProfile;
  readonly outline: Outline;
  readonly height: number;
  readonly propagate: boolean;
}

const SIGMAS = 3;
/** Without noise the curve is off at a ten-thousandth of the height. */
const EXACT = 1e-4;
const ROUNDS = 8;
/** The foot of an effect is read over so many of the lengths in which it grows by a factor e: a cubic holds there. */
const FOOT_LENGTHS = 2.5;

/**
 * Where the effect departs from its baseline (side -1) or returns to it (1): going outward from the half height, the
 * first point at which the averaged curve is within three sigma of the baseline, then read from the local cubic there,
 * since an average over the foot of a peak, which is hollow, is off before the curve is. Null where the curve is not
 * back before the limit.
 */
export function leaving(effect: Leaving, side: 1 | -1): Measured | null {
  const { curve, noise, baseline, averaged, outline, height } = effect;
  const limit = Math.max(SIGMAS * noise.sigma, EXACT * height);
  const found = firstWithin(averaged, outline, limit, side);
  if (found === null) return null;
  const width = FOOT_LENGTHS * footLength(averaged, outline, limit, height, found, side);
  let time = found;
  let fit = localPolynomial(curve, time, width, 3);
  let speed = 0;
  for (let round = 0; round < ROUNDS; round++) {
    speed = outline.direction * (fit.at(time, 1) - baseline.slopeAt(time));
    // Towards the top the effect grows; where noise has it otherwise the average stands.
    if (!(side * speed < 0)) break;
    const move = (limit - outline.direction * (fit.at(time) - baseline.at(time))) / speed;
    if (Math.abs(time + move - found) > width) break;
    time += move;
    if (Math.abs(move) <= 1e-9 * width) break;
    fit = localPolynomial(curve, time, width, 3);
  }
  if (!effect.propagate) return { value: time, noise: 0, dof: noise.dof };
  const u = noiseOf(noise, curve.x, [
    { times: 1, of: fit.functional(time) },
    ...baseline.termsAt(time).map(({ times, of }) => ({ times: -times, of })),
  ]);
  const widest = Math.abs(outline.top - time) / Math.sqrt(12);
  return { value: time, noise: side * speed < 0 ? Math.min(u / Math.abs(speed), widest) : widest, dof: noise.dof };
}

/** The length over which the foot grows by a factor e where it is `limit` high. */
function footLength(
  averaged: HeatProfile,
  outline: Outline,
  limit: number,
  height: number,
  time: number,
  side: 1 | -1,
): number {
  const higher = Math.min(3 * limit, height / 2);
  const half = side < 0 ? outline.halfLeft : outline.halfRight;
  const at = firstWithin(averaged, outline, higher, side) ?? half;
  return Math.abs(time - at) / Math.log(Math.max(higher / limit, 1.1));
}

function firstWithin({ x, d }: HeatProfile, outline: Outline, limit: number, side: 1 | -1): number | null {
  const start = side < 0 ? outline.halfLeft : outline.halfRight;
  const off = (k: number): number => outline.direction * d[k];
  let p = Math.min(x.length - 1, Math.max(0, firstAfter(x, start) - (side < 0 ? 1 : 0)));
  if (off(p) <= limit) return null;
  while (p + side >= 0 && p + side < x.length && off(p + side) > limit) p += side;
  const next = p + side;
  if (next < 0 || next >= x.length) return null;
  return x[p] + ((off(p) - limit) / (off(p) - off(next))) * (x[next] - x[p]);
}
