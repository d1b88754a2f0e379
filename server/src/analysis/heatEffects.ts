import type { Curve, Window } from './curve';
import { BLOCKS_IN_SPAN, straightRule } from './aroundPeak';
import { kindOfEffect, type Lobe } from './heatEffectKind';
import { heatPeak } from './heatPeak';
import { glassTransition } from './glassTransition';
import { levelStretch } from './levelStretch';
import type { Noise } from './noise';
import { startTransient, withoutTransient } from './startTransient';
import { steepPlaces } from './steepPlaces';
import { StraightOutward } from './straightOutward';
import { timeBlocks } from './timeBlocks';

export interface DetectionOptions {
  /** Length of a level stretch, s (10 K). */
  readonly span: number;
  /** Full width of the derivative's polynomial, s (5 K). */
  readonly smooth: number;
}

export type HeatEffect = DetectedPeak | DetectedGlass;

export interface DetectedPeak {
  readonly kind: 'peak';
  readonly direction: 1 | -1;
  /** Time of the peak, s. */
  readonly at: number;
  /** Suggested window; ends on straight stretches, or where a neighbouring effect begins. */
  readonly window: Window;
  readonly height: number;
  /** Height over its noise. */
  readonly sigmas: number;
  /** Whether heat capacity changes under it by more than a tenth of the height: a straight baseline will not do. */
  readonly steps: boolean;
}

export interface DetectedGlass {
  readonly kind: 'glass';
  readonly at: number;
  readonly window: Window;
  readonly step: number;
  readonly sigmas: number;
}

/** Places looked at in one segment, and how far from one the ends of its window may lie, in spans (150 K). */
const MOST_PLACES = 60;
const WITHIN = 15;
/** An effect is a size of so many of its own standard uncertainties, of sigma, and of the largest effect there. */
const SURE = 6;
const OF_SIGMA = 5;
const OF_LARGEST = 0.03;
/** A step of heat capacity worth another baseline. */
const STEP = 0.1;

/**
 * The heat effects of one segment: places steeper than their surroundings, each widened to the window between the next
 * straight stretches, then told apart as glass step or peaks. What touches the start or the end of the segment without
 * a straight stretch before or behind it (a start transient) is none.
 */
export function heatEffects(measured: Curve, noise: Noise, options: DetectionOptions): readonly HeatEffect[] {
  const transient = startTransient(measured, noise);
  const curve = transient === null ? measured : withoutTransient(measured, transient);
  const { x, y } = curve;
  const { span } = options;
  const blocks = timeBlocks(x, y, { first: 0, last: x.length }, span / BLOCKS_IN_SPAN, x[0]);
  const n = blocks.x.length;
  if (n < 3 * BLOCKS_IN_SPAN) return [];
  const outward = new StraightOutward(blocks, straightRule(blocks, span, noise));
  const cores: [number, number][] = [];
  const effects: HeatEffect[] = [];
  for (const place of steepPlaces(blocks, noise).slice(0, MOST_PLACES)) {
    const t = blocks.x[place.block];
    if (cores.some(([from, to]) => t >= from && t <= to)) continue;
    const reach = WITHIN * BLOCKS_IN_SPAN;
    const left = outward.find(place.block, -1, Math.max(0, place.block - reach));
    const right = outward.find(place.block, 1, Math.min(n, place.block + reach));
    if (left === null || right === null) continue;
    const window = { from: left.middle, to: right.middle };
    const core: [number, number] = [blocks.x[left.last - 1], blocks.x[right.first]];
    // A longer stretch of an effect already found, seen from beside it.
    if (cores.some(([from, to]) => core[0] < to && core[1] > from)) continue;
    cores.push(core);
    effects.push(...effectsIn({ measured, curve }, window, noise, options));
  }
  const largest = effects.reduce((most, e) => Math.max(most, sizeOf(e)), 0);
  return effects
    .filter((e) => e.sigmas >= SURE && sizeOf(e) >= Math.max(OF_SIGMA * noise.sigma, OF_LARGEST * largest))
    .sort((a, b) => a.at - b.at);
}

function sizeOf(effect: HeatEffect): number {
  return Math.abs(effect.kind === 'glass' ? effect.step : effect.height);
}

function effectsIn(
  { measured, curve }: { measured: Curve; curve: Curve },
  window: Window,
  noise: Noise,
  { span, smooth }: DetectionOptions,
): HeatEffect[] {
  const kind = kindOfEffect(curve, window, span, noise);
  if (kind === null) return [];
  if (kind.kind === 'glass') {
    const long = withLongerLines(measured, window, span, noise);
    const lines = { spanFrom: window.from - long.from + span / 2, spanTo: long.to - window.to + span / 2 };
    const glass = glassTransition(curve, long, { by: 'half height', ...lines, smooth, noise });
    if (glass === null || glass.midpoint === null) return [];
    const { value, noise: u } = glass.step;
    return [{ kind: 'glass', at: glass.midpoint.value, window: long, step: value, sigmas: sureness(value, u) }];
  }
  return kind.lobes.flatMap((lobe) => peakIn(curve, lobe, noise, span, smooth));
}

/**
 * A glass transition is read from its lines, which want a span and a half inside the window: its ends move outward as far
 * as the measured curve stays straight, at most one span.
 */
function withLongerLines(measured: Curve, { from, to }: Window, span: number, noise: Noise): Window {
  const rule = { span: 1.5 * span, inside: span, outside: span / 2, noise, floor: 0 };
  const left = levelStretch(measured, { ...rule, limit: from, inward: -1 });
  const right = levelStretch(measured, { ...rule, limit: to, inward: 1 });
  return { from: from - (left.level ? left.inside : 0), to: to + (right.level ? right.inside : 0) };
}

function peakIn(curve: Curve, { window, direction }: Lobe, noise: Noise, span: number, smooth: number): HeatEffect[] {
  const peak = heatPeak(curve, window, { baseline: 'linear', spanFrom: span, spanTo: span, smooth, noise });
  if (peak === null || peak.direction !== direction) return [];
  const height = peak.height.value;
  const step = peak.checks === null ? null : peak.checks.step;
  return [
    {
      kind: 'peak',
      direction: peak.direction,
      at: peak.peak.value,
      window,
      height,
      sigmas: Math.min(sureness(height, peak.height.noise), sureness(peak.area.value, peak.area.noise)),
      steps: step !== null && Math.abs(step.value) > Math.max(STEP * Math.abs(height), 5 * step.noise),
    },
  ];
}

function sureness(value: number, u: number): number {
  return u > 0 ? Math.abs(value) / u : Infinity;
}
