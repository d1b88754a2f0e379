import type { Curve, Window } from './curve';
import type { Term } from './functional';
import { departureFrom } from './departure';
import { pastLine } from './extremes';
import { levelAt, lineAt, type StretchLine } from './level';
import { levelTest, untested, type LevelState } from './levelTest';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { passages } from './passage';
import { samplesIn, type SampleRange } from './range';
import { noMaxima, rateMaxima, type RateMaxima } from './rateMaxima';
import { slopeAt } from './slopeCurve';
import { steepest, type Steepest } from './steepest';
import { thinnedTo, type Thinned } from './thinned';

export interface MassStepOptions {
  readonly by: 'levels' | 'tangents';
  /** Length of the stretch at each end, s. */
  readonly spanFrom: number;
  readonly spanTo: number;
  /** Full width of the local polynomial of the derivative, s; null for the least it needs. */
  readonly smooth: number | null;
  /** null: the curve is taken as exact. */
  readonly noise: Noise | null;
  /**
   * false: the same values without what else is known of them, for windows moved to see what their ends do: uncertainties
   * are 0, maxima are not counted, ends not tested.
   */
  readonly propagate?: boolean;
  /** Slope up to which an end counts as level, unit of mass per s. */
  readonly levelSlope?: number;
  /** How long the curve must stay off the start line for a departure, s. */
  readonly departureFor?: number;
}

export interface MassStep {
  readonly massStart: Measured;
  readonly massEnd: Measured;
  /** Start less end: a loss is positive. */
  readonly change: Measured;
  /** Times, s. null where the window holds no slope in the direction of the change. */
  readonly start: Measured | null;
  readonly midpoint: Measured | null;
  readonly end: Measured | null;
  readonly inflection: Measured | null;
  readonly departure: Measured | null;
  /** -dm/dt at the inflection, per s, loss positive. */
  readonly rate: Measured | null;
  readonly maxima: RateMaxima;
  readonly edges: { readonly from: LevelState; readonly to: LevelState };
  readonly readings: number;
  readonly shapes: MassStepShapes;
}

export type Points = readonly (readonly [time: number, y: number])[];

export interface MassStepShapes {
  readonly levelFrom: Points;
  readonly levelTo: Points;
  readonly tangent: Points;
}

/** A rate of change at an end must be below this share of the largest in the window (common practice). */
const LEVEL_SHARE = 0.02;

/**
 * A step of mass between the ends of a window (ISO 11358-1, clause numbers not seen; from memory).
 *
 * Levels: means of the readings within the spans centred on the ends, clipped to the data. Tangents: straight lines of
 * least squares there, both read at the midpoint. `start` is where the first line meets the steepest tangent, `end` where
 * the tangent meets the second, `midpoint` where the curve is halfway between both lines, `inflection` where it is
 * steepest. Readings are averaged, never smoothed; the derivative alone is (`smooth`). Times in s, rate per s.
 * O(readings in the window); null where the window holds fewer than two readings.
 */
export function massStep(curve: Curve, window: Window, options: MassStepOptions): MassStep | null {
  const inside = samplesIn(curve.x, window);
  if (inside.last - inside.first < 2) return null;
  const { noise, propagate = true } = options;
  const smooth = options.smooth ?? 0;
  const line = options.by === 'levels' ? levelAt : lineAt;
  const lines = { from: line(curve, window.from, options.spanFrom), to: line(curve, window.to, options.spanTo) };
  const known = propagate ? noise : null;
  const measureWith =
    (of: Noise | null): Measure =>
    (value, terms) => ({
      value,
      noise: of === null ? 0 : noiseOf(of, curve.x, terms()),
      dof: of?.dof ?? null,
    });
  const measure = measureWith(known);

  const centre = (window.from + window.to) / 2;
  const falling = lines.from.at(centre) >= lines.to.at(centre);
  const steep = steepest(curve, window, falling ? 'falling' : 'rising', { smooth, noise, propagate });
  const near = propagate ? (steep?.noise ?? noise) : null;
  const measureNear = measureWith(near);
  const half = steep && halfway(curve, window, lines, falling, smooth, steep, noise?.sigma ?? 0);
  const at = half ?? steep?.time.value ?? centre;
  const from: Term = { times: 1, of: lines.from.functional(at) };
  const to: Term = { times: -1, of: lines.to.functional(at) };
  const change = lines.from.at(at) - lines.to.at(at);
  const maxima = propagate ? rateMaxima(curve, window, smooth, falling, near) : noMaxima;
  const limits = { slope: options.levelSlope ?? Infinity, ofRate: LEVEL_SHARE * maxima.largest };
  return {
    massStart: measure(lines.from.at(at), () => [from]),
    massEnd: measure(lines.to.at(at), () => [{ ...to, times: 1 }]),
    change: measure(change, () => [from, to]),
    start: steep && meeting(lines.from, steep, measureNear),
    midpoint: half === null ? null : midpointOf(curve, lines, half, smooth, known && measureNear),
    end: steep && meeting(lines.to, steep, measureNear),
    inflection: steep && steep.time,
    departure: departureFrom(curve, window, lines.from, falling, {
      duration: options.departureFor ?? 0,
      step: Math.abs(change),
      smooth,
      noise,
      propagate,
    }),
    rate: steep && { ...steep.slope, value: -steep.slope.value },
    maxima,
    edges: propagate
      ? {
          from: levelTest(curve, lines.from.range, limits, known),
          to: levelTest(curve, lines.to.range, limits, known),
        }
      : { from: untested, to: untested },
    readings: inside.last - inside.first,
    shapes: shapesOf(lines, steep),
  };
}

type Measure = (value: number, terms: () => readonly Term[]) => Measured;

interface Lines {
  readonly from: StretchLine;
  readonly to: StretchLine;
}

/** Where a line meets the steepest tangent. */
function meeting(line: StretchLine, steep: Steepest, measure: Measure): Measured | null {
  const slope = steep.slope.value - line.slope;
  if (slope === 0) return null;
  const t0 = steep.time.value;
  const t = t0 + (line.at(t0) - steep.tangent(t0)) / slope;
  return measure(t, () => [
    { times: 1 / slope, of: line.functional(t) },
    { times: -1 / slope, of: steep.tangentFunctional(t) },
  ]);
}

/**
 * The passage of the curve through the line midway between both, in the direction of the step, next to the inflection. Looked
 * for on averages first, then on the readings about it, as far as noise can cross to and fro.
 */
function halfway(
  curve: Curve,
  window: Window,
  lines: Lines,
  falling: boolean,
  smooth: number,
  steep: Steepest,
  sigma: number,
): number | null {
  const near = steep.time.value;
  const height = Math.abs(lines.from.at(near) - lines.to.at(near));
  const band = Math.min(3 * sigma, height / 4);
  const slope = (lines.from.slope + lines.to.slope) / 2;
  const origin = (lines.from.at(near) + lines.to.at(near)) / 2;
  const line = { origin, slope, centre: near };
  const nearest = (
    { x, y }: Thinned,
    { first, last }: SampleRange,
    past?: (i: number, below: boolean) => number,
  ): number | null => {
    let best: number | null = null;
    for (const p of passages(x, (i) => y[i] - origin - slope * (x[i] - near), first, last, band, 0, past)) {
      if (p.direction !== (falling ? 'falling' : 'rising')) continue;
      if (best === null || Math.abs(p.time - near) < Math.abs(best - near)) best = p.time;
    }
    return best;
  };
  const { means, size } = thinnedTo(curve, smooth / 8);
  const about = size === 1 ? null : nearest(means, samplesIn(means.x, window));
  const onReadings = (part: Window): number | null =>
    nearest(curve, samplesIn(curve.x, part), (i, below) => pastLine(curve, i, below, line));
  if (size === 1) return onReadings(window);
  if (about === null) return null;
  const reach = Math.max(smooth, (8 * sigma) / Math.abs(steep.slope.value - slope));
  return onReadings({ from: Math.max(window.from, about - reach), to: Math.min(window.to, about + reach) }) ?? about;
}

function midpointOf(
  curve: Curve,
  lines: Lines,
  time: number,
  smooth: number,
  measure: Measure | null,
): Measured | null {
  if (measure === null) return { value: time, noise: 0, dof: null };
  const slope = slopeAt(curve, time, smooth, null).value - (lines.from.slope + lines.to.slope) / 2;
  if (slope === 0) return null;
  const { first } = samplesIn(curve.x, { from: time, to: time });
  const before = Math.max(0, first - 1);
  const part = (time - curve.x[before]) / (curve.x[before + 1] - curve.x[before]);
  return measure(time, () => [
    { times: -1 / slope, of: { first: before, weights: Float64Array.of(1 - part, part) } },
    { times: 0.5 / slope, of: lines.from.functional(time) },
    { times: 0.5 / slope, of: lines.to.functional(time) },
  ]);
}

function shapesOf({ from, to }: Lines, steep: Steepest | null): MassStepShapes {
  const tangent: [number, number][] = [];
  let start = from.to;
  let end = to.from;
  if (steep !== null && steep.slope.value !== from.slope && steep.slope.value !== to.slope) {
    const t0 = steep.time.value;
    start = t0 + (from.at(t0) - steep.tangent(t0)) / (steep.slope.value - from.slope);
    end = t0 + (to.at(t0) - steep.tangent(t0)) / (steep.slope.value - to.slope);
    tangent.push([start, steep.tangent(start)], [end, steep.tangent(end)]);
  }
  return {
    levelFrom: [from.from, Math.max(from.to, start)].map((t) => [t, from.at(t)] as const),
    levelTo: [Math.min(to.from, end), to.to].map((t) => [t, to.at(t)] as const),
    tangent,
  };
}
