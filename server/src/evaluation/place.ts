import type { Window } from '../analysis/curve';
import type { Outcome } from '../base/outcome';
import { failed, success } from '../base/outcome';
import type { FindingCode } from '../findings/codes';
import { numberText } from '../findings/numberText';
import type { Amount, Place, RangeOf, SegmentName } from '../language/model';
import type { Segment } from '../runs/run';
import type { Placed } from './outcome';
import type { PreparedRun } from './preparedRun';
import { timeAtClamped } from './timeAt';

/** Why a statement could not be placed on the run, at which of its tokens. */
export interface PlaceFailure {
  readonly code: FindingCode;
  readonly token: string;
  readonly message: string;
  /** Segments that would do, for a fix. */
  readonly candidates: readonly string[];
}

/** A written end may lie this far (K) outside the data: exports start and stop a little off the programme. */
const endTolerance = 1;

/** Edges are moved by this much to see what they matter (language.md 4). */
export const edgeShift = { kelvin: 5, seconds: 30 };

export function isTime(amount: Amount): boolean {
  return (
    amount.unit !== null && amount.unit.dimension[2] === 1 && amount.unit.dimension.every((e, i) => i === 2 || e === 0)
  );
}

/** °C of a temperature point written in °C or K. */
export function celsiusOf(amount: Amount): number {
  const unit = amount.unit;
  if (unit === null) return amount.value;
  return amount.value * unit.factor + unit.offset - 273.15;
}

export function secondsOf(amount: Amount): number {
  return amount.value * (amount.unit?.factor ?? 1);
}

export function findSegment(run: PreparedRun, name: SegmentName): Segment | null {
  return run.segments.find((s) => s.direction === name.direction && s.index === name.index) ?? null;
}

export function segmentMissing(run: PreparedRun, name: SegmentName): PlaceFailure {
  const has = run.segments.map((s) => s.name).join(', ');
  return {
    code: 'segment-missing',
    token: 'segment',
    message: `The run has no ${name.direction} ${name.index}; it has ${has === '' ? 'no segment' : has}.`,
    candidates: run.segments.filter((s) => s.direction === name.direction).map((s) => s.name),
  };
}

/** Resolves a written range. `around` windows are found by their own rule and only their segment is resolved here. */
export function placeRange(run: PreparedRun, range: RangeOf, place: Place): Outcome<Placed, PlaceFailure> {
  return isTime(range.from) ? placeTimes(run, range, place.segment) : placeTemperatures(run, range, place.segment);
}

function placeTimes(run: PreparedRun, range: RangeOf, name: SegmentName | null): Outcome<Placed, PlaceFailure> {
  const segment = name === null ? null : findSegment(run, name);
  if (name !== null && segment === null) return failed(segmentMissing(run, name));
  const origin = segment?.start ?? 0;
  const window = ordered(secondsOf(range.from) + origin, secondsOf(range.to) + origin);
  if (!(window.to > window.from)) return failed(empty());
  const first = segment?.start ?? run.time[0];
  const last = segment?.end ?? run.time[run.time.length - 1];
  if (window.from < first - 1 || window.to > last + 1) {
    return failed({
      code: 'window-outside-run',
      token: 'window',
      message: `The window ${minutes(window.from - origin)}..${minutes(window.to - origin)} min lies outside ${segment?.name ?? 'the run'}, which spans ${minutes(first - origin)}..${minutes(last - origin)} min.`,
      candidates: [],
    });
  }
  const holder =
    segment ?? run.segments.find((s) => s.start <= window.from + 1e-6 && s.end >= window.to - 1e-6) ?? null;
  const clipped = clip(window, first, last);
  return success({
    segment: holder,
    window: clipped,
    shown: { from: (clipped.from - origin) / 60, to: (clipped.to - origin) / 60, unit: 'min', rule: null },
    secondsPerKelvin: secondsPerKelvin(run, holder, clipped),
  });
}

function placeTemperatures(run: PreparedRun, range: RangeOf, name: SegmentName | null): Outcome<Placed, PlaceFailure> {
  const a = celsiusOf(range.from);
  const b = celsiusOf(range.to);
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  if (!(high > low)) return failed(empty());
  let segment: Segment | null;
  if (name !== null) {
    segment = findSegment(run, name);
    if (segment === null) return failed(segmentMissing(run, name));
    if (segment.direction === 'hold') {
      return failed({
        code: 'wrong-dimension',
        token: 'window',
        message: `${segment.name} stays at ${degrees(segment.from)}; give its window in min from its start.`,
        candidates: [],
      });
    }
    if (!holds(segment, low, high)) return failed(outside(low, high, [segment]));
  } else {
    const heatings = run.segments.filter((s) => s.direction === 'heating');
    const holding = heatings.filter((s) => holds(s, low, high));
    if (holding.length === 0) return failed(outside(low, high, heatings));
    if (holding.length > 1) {
      return failed({
        code: 'window-ambiguous-segment',
        token: 'window',
        message: `${degrees(low)} to ${degrees(high)} lies in ${holding.map((s) => s.name).join(' and in ')}: say which.`,
        candidates: holding.map((s) => s.name),
      });
    }
    segment = holding[0];
  }
  const map = run.map(segment);
  if (map === null) return failed(outside(low, high, [segment]));
  const window = ordered(timeAtClamped(map, low), timeAtClamped(map, high));
  if (!(window.to > window.from)) return failed(empty());
  return success({
    segment,
    window: clip(window, segment.start, segment.end),
    // In the order of time, whichever way it was written.
    shown:
      segment.direction === 'cooling'
        ? { from: high, to: low, unit: '°C', rule: null }
        : { from: low, to: high, unit: '°C', rule: null },
    secondsPerKelvin: secondsPerKelvin(run, segment, window),
  });
}

export function secondsPerKelvin(
  run: PreparedRun,
  segment: Segment | null,
  window: Window,
): Placed['secondsPerKelvin'] {
  if (segment === null || segment.direction === 'hold') return null;
  const map = run.map(segment);
  if (map === null) return null;
  const at = (time: number) => 1 / Math.max(Math.abs(map.rateAt(time)), 1e-9);
  return { from: at(window.from), to: at(window.to) };
}

/** The window with its edges moved outward (positive) or inward by `units` of the standard edge shift, within the data. */
export function shiftedWindow(run: PreparedRun, placed: Placed, from: number, to: number): Window {
  const per = placed.secondsPerKelvin;
  const step = (edge: 'from' | 'to') => (per === null ? edgeShift.seconds : edgeShift.kelvin * per[edge]);
  const first = placed.segment?.start ?? run.time[0];
  const last = placed.segment?.end ?? run.time[run.time.length - 1];
  return clip({ from: placed.window.from + from * step('from'), to: placed.window.to + to * step('to') }, first, last);
}

function holds(segment: Segment, low: number, high: number): boolean {
  const bottom = Math.min(segment.from, segment.to);
  const top = Math.max(segment.from, segment.to);
  return low >= bottom - endTolerance && high <= top + endTolerance;
}

function outside(low: number, high: number, segments: readonly Segment[]): PlaceFailure {
  const spans = segments.map((s) => `${s.name} spans ${degrees(s.from)} to ${degrees(s.to)}`).join('; ');
  return {
    code: 'window-outside-run',
    token: 'window',
    message: `The window ${degrees(low)} to ${degrees(high)} lies outside the data${spans === '' ? ': the run has no heating' : `: ${spans}`}.`,
    candidates: [],
  };
}

function empty(): PlaceFailure {
  return { code: 'window-empty', token: 'window', message: 'Both ends of the window are the same.', candidates: [] };
}

function ordered(a: number, b: number): Window {
  return a <= b ? { from: a, to: b } : { from: b, to: a };
}

function clip(window: Window, first: number, last: number): Window {
  return { from: Math.max(window.from, first), to: Math.min(window.to, last) };
}

function degrees(value: number): string {
  return `${numberText(value, 1)} °C`;
}

function minutes(seconds: number): string {
  return numberText(seconds / 60, 2);
}
