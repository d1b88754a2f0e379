import type { Baseline, BaselineKind, Line } from './baseline';
import { otherAreas, type OtherArea } from './otherAreas';
import { windowBaselines, type WindowBaselines } from './windowBaselines';
import type { Curve, Window } from './curve';
import { movingMean, heatProfile, outlineOf, type HeatProfile, type Outline } from './heatProfile';
import { heatTangent, type HeatTangent } from './heatTangent';
import { leaving } from './leaving';
import type { Term } from './functional';
import type { Measured } from './measured';
import { noiseOf, silent, type Noise } from './noise';
import { heatShapes, type HeatPeakShapes } from './heatShapes';
import { oppositePart, type OppositePart } from './oppositePart';
import { outsideOf, type OutsideState } from './outsideState';
import { halfPassage, type HalfPassage } from './halfPassage';
import { peakTop, type PeakTop } from './peakTop';
import { samplesIn } from './range';
import { withinData } from './withinData';
import { sizeLeaving, thinnedCurve, thinnedNoise } from './thinnedCurve';
import { peakSmoothingLoss } from './smoothingLoss';

export interface HeatPeakOptions {
  readonly baseline: BaselineKind;
  /** Longest level stretch at each limit, s. */
  readonly spanFrom: number;
  readonly spanTo: number;
  /** Full width of the local polynomial for flanks and top, s; null for the least it needs. */
  readonly smooth: number | null;
  /** false: `smooth` is taken as it stands, not narrowed to half of the peak's width (where the analyst wrote it). */
  readonly narrow?: boolean;
  /** Longest average for departure and return, s. */
  readonly departureFor?: number;
  /** null: the curve is taken as exact. */
  readonly noise: Noise | null;
  /** false leaves the uncertainties and what only findings need out and changes nothing else. */
  readonly propagate?: boolean;
}

/** Times in s, heat in unit of y, endothermic positive as the curve is. */
export interface HeatPeak {
  /** 1: the effect is endothermic; -1: exothermic (for a curve that is endothermic upwards). */
  readonly direction: 1 | -1;
  /** The integral of curve less baseline, unit of y times s, signed. */
  readonly area: Measured;
  /** Curve less baseline at `peak`, signed. */
  readonly height: Measured;
  readonly peak: Measured;
  readonly onset: Measured | null;
  readonly end: Measured | null;
  readonly departure: Measured | null;
  readonly return: Measured | null;
  readonly halfLeft: Measured | null;
  readonly halfRight: Measured | null;
  /** Width at half of the height, s. */
  readonly halfWidth: Measured | null;
  readonly converged: boolean;
  /** Smallest and largest fraction of area passed; outside 0..1 the sigmoidal blend has no meaning. */
  readonly fraction: { readonly lowest: number; readonly highest: number };
  readonly checks: HeatPeakChecks | null;
  readonly shapes: HeatPeakShapes;
}

/** What findings are made of; left out where nothing is propagated. */
export interface HeatPeakChecks {
  /** The largest stretch on the other side of the baseline: the baseline crosses the curve, or two effects are in one window. */
  readonly opposite: OppositePart | null;
  readonly from: OutsideState | null;
  readonly to: OutsideState | null;
  /** The areas by every baseline that can be drawn, the one used included. */
  readonly areas: readonly OtherArea[];
  /** Line after less line before, at the peak: the step of heat capacity under it. */
  readonly step: Measured;
  /** Time from a twentieth of the height to the peak. */
  readonly leadingEdge: number;
  /** Samples between the half heights, and in the window. */
  readonly readingsAcrossHalf: number;
  readonly readings: number;
  /** Width of the local polynomial used, s, and what it takes from the flank of a peak this wide, relative. */
  readonly smooth: number;
  readonly smoothingLoss: number;
  /** Height over sigma. */
  readonly signalToNoise: number;
}

/** Samples a peak needs: one for each limit and three between. */
const FEWEST = 5;
/** Averages that the smoothing width keeps where a curve is denser than that. */
const POINTS = 100;
/** The stretch outside a limit that is looked at: so much of the span (3 K of 10 K). */
const OUTSIDE = 0.3;

/**
 * An effect of heat between the limits of a window (ISO 11357-1 and -3 from memory; terms of IUPAC's characteristic
 * temperatures): area between curve and baseline, peak = farthest from the baseline used, onset and end = steepest
 * tangent of the first and last flank, slope of the total signal, met with the baseline (for a sigmoidal one with its
 * straight line on that side), departure and return = where the curve leaves and regains the baseline by three sigma.
 *
 * What is integrated is never smoothed. Flanks and top are read from local polynomials of full width `smooth`, narrowed
 * to half of the width at half height unless `narrow` is false. A window that reaches beyond the data ends with them.
 * Uncertainties from noise are linearised: every number is a functional of the samples near it. O(samples in the window);
 * null where it holds fewer than five.
 */
export function heatPeak(curve: Curve, asked: Window, options: HeatPeakOptions): HeatPeak | null {
  const window = withinData(curve, asked);
  const inside = samplesIn(curve.x, window);
  if (inside.last - inside.first < FEWEST) return null;
  const { propagate = true } = options;
  const ground = groundOf(curve, window, options);
  const { thin, noise, baselines, baseline, profile, outline, wide, smooth } = ground;
  const measure = (value: number, terms: () => readonly Term[]): Measured => ({
    value,
    noise: propagate ? noiseOf(noise, thin.x, terms()) : 0,
    dof: noise.dof,
  });
  const top = peakTop(thin, window, baseline, outline, smooth);
  const first = flankTangent(ground, window, top, -1);
  const last = flankTangent(ground, window, top, 1);
  const height = top.value - baseline.at(top.time);
  const left = halfPassage(thin, baseline, outline.halfLeft, outline.halfRight, height / 2, smooth, -1);
  const right = halfPassage(thin, baseline, outline.halfLeft, outline.halfRight, height / 2, smooth, 1);
  const width = Math.min(Math.max(smooth, wide / 4) / 2, options.departureFor ?? Infinity);
  const averaged = movingMean(profile, width);
  const off = { curve: thin, noise, baseline, averaged, outline, height: Math.abs(height), propagate };
  const halfWidthTerms = (l: HalfPassage, r: HalfPassage): readonly Term[] => [
    ...r.terms(top),
    ...times(l.terms(top), -1),
  ];

  return {
    direction: outline.direction,
    area: measure(baseline.area, () => baseline.areaTerms()),
    height: measure(height, () => top.heightTerms()),
    peak: measure(top.time, () => top.timeTerms()),
    onset: first && meeting(baseline.before, first, measure),
    end: last && meeting(baseline.after, last, measure),
    departure: leaving(off, -1),
    return: leaving(off, 1),
    halfLeft: left && measure(left.time, () => left.terms(top)),
    halfRight: right && measure(right.time, () => right.terms(top)),
    halfWidth: left && right && measure(right.time - left.time, () => halfWidthTerms(left, right)),
    converged: baseline.converged,
    fraction: baseline.fraction,
    checks: propagate
      ? {
          opposite: oppositePart(thin, baseline, averaged, outline, noise),
          from: outsideOf(thin, window.from, -OUTSIDE * options.spanFrom, baseline.before, height, noise),
          to: outsideOf(thin, window.to, OUTSIDE * options.spanTo, baseline.after, height, noise),
          areas: otherAreas(baselines, baseline, measure),
          step: stepAt(baselines.astrideLeft().line, baselines.astrideRight().line, top.time, measure),
          leadingEdge: top.time - outline.footLeft,
          readingsAcrossHalf: readingsBetween(curve, outline.halfLeft, outline.halfRight),
          readings: inside.last - inside.first,
          smooth,
          smoothingLoss: peakSmoothingLoss(thin, top.time, wide, smooth),
          signalToNoise: noise.sigma > 0 ? Math.abs(height) / noise.sigma : Infinity,
        }
      : null,
    shapes: heatShapes(window, baselines, baseline, top, first, last),
  };
}

/** What all readings of a peak rest on. */
interface Ground {
  /** The curve, or averages of it where it is far denser than what is read from it. */
  readonly thin: Curve;
  readonly noise: Noise;
  readonly baselines: WindowBaselines;
  readonly baseline: Baseline;
  readonly profile: HeatProfile;
  readonly outline: Outline;
  readonly wide: number;
  readonly smooth: number;
}

/**
 * A local polynomial over thousands of readings says no more than one over their averages, a hundred in its width. Starts
 * with averages fit for `smooth` and goes to finer ones where the peak turns out narrow.
 */
function groundOf(curve: Curve, window: Window, options: HeatPeakOptions): Ground {
  const asked = options.smooth ?? 0;
  const span = Math.min(options.spanFrom, options.spanTo);
  let size = sizeLeaving(POINTS, curve, Math.min(asked, span));
  for (;;) {
    const thin = thinnedCurve(curve, size);
    const length = ((curve.x[curve.x.length - 1] - curve.x[0]) / (curve.x.length - 1)) * size;
    const noise = thinnedNoise(options.noise ?? silent, size, length);
    const baselines = windowBaselines(curve, thin, window, { ...options, noise });
    const baseline = baselines.of(options.baseline);
    const profile = heatProfile(baselines.grid, baseline);
    const outline = outlineOf(profile, asked);
    const wide = outline.halfRight - outline.halfLeft;
    const smooth = options.narrow === false ? asked : Math.min(asked, wide / 2);
    const finer = Math.min(size, sizeLeaving(POINTS / 2, curve, smooth));
    if (finer === size) return { thin, noise, baselines, baseline, profile, outline, wide, smooth };
    size = finer;
  }
}

type Measure = (value: number, terms: () => readonly Term[]) => Measured;

/** Tangent of the flank before (-1) or after (1) the top, from the foot of the effect to its top. */
function flankTangent(
  { thin, outline, smooth }: Ground,
  window: Window,
  top: PeakTop,
  side: 1 | -1,
): HeatTangent | null {
  const flank =
    side < 0
      ? { from: Math.max(window.from, outline.footLeft), to: top.time }
      : { from: top.time, to: Math.min(window.to, outline.footRight) };
  const direction = side * outline.direction < 0 ? 1 : -1;
  return heatTangent(thin, flank, direction, smooth);
}

/** Where the tangent of a flank meets a line. */
function meeting(line: Line, tangent: HeatTangent, measure: Measure): Measured | null {
  const slope = tangent.slope - line.slope;
  if (slope === 0) return null;
  const time = tangent.time + (line.at(tangent.time) - tangent.value) / slope;
  return measure(time, () => [
    ...times(line.termsAt(time), 1 / slope),
    { times: -1 / slope, of: tangent.fit.functional(tangent.time) },
    { times: -(time - tangent.time) / slope, of: tangent.fit.functional(tangent.time, 1) },
  ]);
}

function stepAt(left: Line, right: Line, time: number, measure: Measure): Measured {
  return measure(right.at(time) - left.at(time), () => [...right.termsAt(time), ...times(left.termsAt(time), -1)]);
}

function times(terms: readonly Term[], factor: number): readonly Term[] {
  return terms.map((term) => ({ times: term.times * factor, of: term.of }));
}

function readingsBetween(curve: Curve, from: number, to: number): number {
  const { first, last } = samplesIn(curve.x, { from, to });
  return last - first;
}
