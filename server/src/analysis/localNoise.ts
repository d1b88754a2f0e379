import { blockVariances } from './blockVariances';
import type { Curve } from './curve';
import type { Noise } from './noise';
import { extentOf } from './extent';
import { contrastVariance, fitNoise } from './noiseModel';
import { firstAfter, firstAtOrAfter } from './range';

/** Looked at about a point: so many smoothing widths on both sides, so many contrasts, of blocks of so many readings. */
const WIDTHS = 5;
const CONTRASTS = 512;
const LONGEST = 16;
/** More scatter than so many deviations of chance is believed. */
const SURE = 3;

const known = new WeakMap<Curve, { noise: Noise; found: Map<string, Noise> }>();
const KEPT = 64;

/**
 * The noise about a point. Readings often scatter more while a reaction runs than at rest (gas, temperature control): where
 * the contrasts of neighbouring readings within five smoothing widths are larger than the segment's noise explains, by more
 * than chance, the autocovariance is fitted to them instead. Never less than the segment's noise. The point is rounded to a
 * whole smoothing width, and the answer kept with the curve: windows that move ask again.
 */
export function localNoise(noise: Noise, curve: Curve, at: number, smooth: number): Noise {
  if (!(smooth > 0)) return noise;
  const step = Math.round((at - curve.x[0]) / smooth);
  let kept = known.get(curve);
  if (kept?.noise !== noise || kept.found.size > KEPT) known.set(curve, (kept = { noise, found: new Map() }));
  const key = `${step} ${smooth}`;
  let found = kept.found.get(key);
  if (found === undefined) kept.found.set(key, (found = estimate(noise, curve, curve.x[0] + step * smooth, smooth)));
  return found;
}

function estimate(noise: Noise, curve: Curve, at: number, smooth: number): Noise {
  const { x, y } = curve;
  const first = firstAtOrAfter(x, at - WIDTHS * smooth);
  const last = firstAfter(x, at + WIDTHS * smooth, first);
  if (last - first < 16) return noise;
  const interval = (x[last - 1] - x[first]) / (last - 1 - first);
  const longest = Math.min(smooth / 2, LONGEST * interval);
  const blocks = blockVariances(x, y, { first, last }, interval, longest, CONTRASTS, extentOf(x).mostStep);
  let more = false;
  const larger = blocks.map((block) => {
    const expected = contrastVariance(noise.components, block.size, interval);
    if (block.variance > expected * (1 + SURE * Math.sqrt(2 / block.count))) more = true;
    return { ...block, variance: Math.max(block.variance, expected) };
  });
  if (!more) return noise;
  return { ...noise, components: fitNoise(larger, interval, x[x.length - 1] - x[0]) };
}
