import type { Line } from './baseline';
import type { Curve, Window } from './curve';
import type { Term } from './functional';
import { glassChecks, type GlassChecks } from './glassChecks';
import { glassLines, type GlassLines } from './glassLines';
import { equalAreasPoint, halfHeightPoint, type GlassPoint } from './glassMidpoint';
import type { Measured } from './measured';
import { noiseOf, silent, type Noise } from './noise';
import { samplesIn } from './range';
import { steepest, type Steepest } from './steepest';
import { withinData } from './withinData';
import { sizeLeaving, thinnedCurve, thinnedNoise } from './thinnedCurve';

export type GlassMidpointKind = 'half height' | 'equal areas' | 'inflection';

export interface GlassOptions {
  /** What `midpoint` means; the other quantities do not depend on it but for `step`, which is read there. */
  readonly by: GlassMidpointKind;
  /** Length of the straight stretch inside each end of the window, s; at most a third of the window. */
  readonly spanFrom: number;
  readonly spanTo: number;
  /** Full width of the local polynomial of the derivative, s; null for the least it needs. */
  readonly smooth: number | null;
  /** false: `smooth` is taken as it stands, not narrowed to half of the transition (where the analyst wrote it). */
  readonly narrow?: boolean;
  /** null: the curve is taken as exact. */
  readonly noise: Noise | null;
  /** false leaves the uncertainties and what only findings need out and changes nothing else. */
  readonly propagate?: boolean;
}

/** Averages that the smoothing width keeps where a curve is denser than that. */
const POINTS = 100;

type Points = readonly (readonly [time: number, y: number])[];

/** Times in s, step in unit of y. null where the curve has no such point. */
export interface GlassTransition {
  readonly onset: Measured | null;
  readonly midpoint: Measured | null;
  readonly inflection: Measured | null;
  readonly end: Measured | null;
  /** Line after less line before, at `midpoint`. */
  readonly step: Measured;
  readonly checks: GlassChecks | null;
  readonly shapes: {
    readonly lineFrom: Points;
    readonly lineTo: Points;
    readonly tangent: Points;
    /** From line to line at the midpoint. */
    readonly step: Points;
  };
}

/**
 * A glass transition between the ends of a window (ISO 11357-2 and IUPAC's characteristic temperatures, from memory):
 * straight lines of least squares over `span` inside each end, which need not be parallel; onset and end where the
 * tangent at the steepest point, slope of the total signal, meets them; midpoint by half height (the curve meets the line
 * midway between both), by equal areas (the vertical that leaves as much between curve and line before it as behind it)
 * or by inflection (the extremum of the derivative). `smooth` is narrowed to half of onset..end unless `narrow` is false
 * and affects the derivative and the reading of the half height only. A window that reaches beyond the data ends with
 * them. O(samples in the window); null with fewer than three samples on a line.
 */
export function glassTransition(curve: Curve, asked: Window, options: GlassOptions): GlassTransition | null {
  const window = withinData(curve, asked);
  const ground = groundOf(curve, window, options);
  if (ground === null) return null;
  const { thin, noise, lines, steep, smooth } = ground;
  const { before, after } = lines;
  const { propagate = true } = options;
  const measure = (value: number, terms: () => readonly Term[]): Measured => ({
    value,
    noise: propagate ? noiseOf(noise, thin.x, terms()) : 0,
    dof: noise.dof,
  });

  const point = (of: GlassPoint | null): Measured | null => of && measure(of.time, () => of.terms());
  const inflection = steep && steep.time;
  const half = steep && halfHeightPoint(thin, window, lines, steep.time.value, smooth);
  const midpoint =
    options.by === 'inflection'
      ? inflection
      : point(options.by === 'half height' ? half : equalAreasPoint(curve, thin, window, lines));
  const at = midpoint?.value ?? (window.from + window.to) / 2;
  const step = measure(after.at(at) - before.at(at), () => [
    ...after.termsAt(at),
    ...before.termsAt(at).map(({ times, of }) => ({ times: -times, of })),
  ]);
  const onset = steep && meeting(before, steep, measure);
  const end = steep && meeting(after, steep, measure);
  return {
    onset,
    midpoint,
    inflection,
    end,
    step,
    checks: propagate
      ? glassChecks(thin, window, lines, { at, step, smooth, steep, noise, readings: readingsIn(curve, window) })
      : null,
    shapes: {
      lineFrom: [window.from, end?.value ?? window.to].map((t) => [t, before.at(t)] as const),
      lineTo: [onset?.value ?? window.from, window.to].map((t) => [t, after.at(t)] as const),
      tangent:
        steep === null || onset === null || end === null
          ? []
          : [onset.value, end.value].map((t) => [t, steep.tangent(t)] as const),
      step: [
        [at, before.at(at)],
        [at, after.at(at)],
      ],
    },
  };
}

type Measure = (value: number, terms: () => readonly Term[]) => Measured;

/** What all readings of a transition rest on. */
interface Ground {
  /** The curve, or averages of it where it is far denser than what is read from it. */
  readonly thin: Curve;
  readonly noise: Noise;
  readonly lines: GlassLines;
  readonly steep: Steepest | null;
  readonly smooth: number;
}

/** Starts with averages fit for `smooth` and goes to finer ones where the transition turns out narrow. */
function groundOf(curve: Curve, window: Window, options: GlassOptions): Ground | null {
  const span = Math.min(options.spanFrom, options.spanTo);
  let size = sizeLeaving(POINTS, curve, Math.min(options.smooth ?? 0, span));
  for (;;) {
    const thin = thinnedCurve(curve, size);
    const length = ((curve.x[curve.x.length - 1] - curve.x[0]) / (curve.x.length - 1)) * size;
    const noise = thinnedNoise(options.noise ?? silent, size, length);
    const lines = glassLines(thin, window, options.spanFrom, options.spanTo);
    if (lines === null) {
      if (size === 1) return null;
      size = 1;
      continue;
    }
    const { steep, smooth } = steepestPoint(thin, lines, options, noise, options.propagate ?? true);
    const finer = Math.min(size, sizeLeaving(POINTS / 2, curve, smooth));
    if (finer === size) return { thin, noise, lines, steep, smooth };
    size = finer;
  }
}

function readingsIn({ x }: Curve, window: Window): number {
  const { first, last } = samplesIn(x, window);
  return last - first;
}

/** The steepest point between the lines; looked for twice, because how far to smooth follows from how steep it is. */
function steepestPoint(
  curve: Curve,
  lines: GlassLines,
  options: GlassOptions,
  noise: Noise,
  propagate: boolean,
): { steep: Steepest | null; smooth: number } {
  const { x } = curve;
  const inner = { from: x[lines.rangeBefore.last - 1], to: x[lines.rangeAfter.first] };
  const look = (smooth: number, uncertainties: boolean): Steepest | null =>
    steepest(curve, inner, lines.direction > 0 ? 'rising' : 'falling', { smooth, noise, propagate: uncertainties });
  const given = options.smooth ?? 0;
  const first = look(given, options.narrow === false && propagate);
  if (first === null || options.narrow === false) return { steep: first, smooth: given };
  const at = first.time.value;
  const wide = Math.abs((lines.after.at(at) - lines.before.at(at)) / first.slope.value);
  const smooth = Math.min(given, wide / 2);
  return { steep: look(smooth, propagate), smooth };
}

/** Where the steepest tangent meets a line. */
function meeting(line: Line, steep: Steepest, measure: Measure): Measured | null {
  const slope = steep.slope.value - line.slope;
  if (slope === 0) return null;
  const t0 = steep.time.value;
  const time = t0 + (line.at(t0) - steep.tangent(t0)) / slope;
  return measure(time, () => [
    ...line.termsAt(time).map(({ times, of }) => ({ times: times / slope, of })),
    { times: -1 / slope, of: steep.tangentFunctional(time) },
  ]);
}
