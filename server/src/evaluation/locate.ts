import { aroundStep } from '../analysis/aroundStep';
import { aroundPeak } from '../analysis/aroundPeak';
import type { Curve, Window } from '../analysis/curve';
import type { Noise } from '../analysis/noise';
import { failed, success, type Outcome } from '../base/outcome';
import { numberText } from '../findings/numberText';
import type { Amount, Place, PlaceWindow, SignalName } from '../language/model';
import type { Segment } from '../runs/run';
import type { Failure } from './failedOutcome';
import type { Placed } from './outcome';
import {
  celsiusOf,
  findSegment,
  isTime,
  placeRange,
  secondsOf,
  secondsPerKelvin,
  segmentMissing,
  type PlaceFailure,
} from './place';
import type { PreparedRun } from './preparedRun';
import { defaults } from './settings';
import type { StatementContext } from './statementContext';
import { hullOfParts } from './sums';
import { timeAtClamped } from './timeAt';

export interface Located {
  readonly placed: Placed;
  readonly curve: Curve;
  readonly noise: Noise;
  readonly signal: SignalName;
}

/** `within` where it is not written: wide enough for a broad step, the walk ends at the first level stretch anyway. */
const defaultWithin = { kelvin: 300, seconds: 1800 };

/** Finds window, curve and noise of a statement on one signal. */
export function locate(
  context: StatementContext,
  place: Place,
  signal: SignalName,
  span: Amount | null,
  sumOf: readonly string[] | null = null,
): Outcome<Located, Failure> {
  const { run } = context;
  const prepared = run.signals.get(signal);
  if (prepared === undefined) return failed(signalMissing(run, signal));
  const placed =
    sumOf !== null && place.window === null ? hullOfParts(context, sumOf) : placeOn(run, place, signal, span);
  if (!placed.ok) return placed;
  const curve = prepared.curve(placed.value.segment);
  if (curve === null) {
    return failed({
      code: 'too-few-points',
      token: 'window',
      message: `${placed.value.segment?.name ?? 'The run'} has fewer than two good readings of ${signal}.`,
      candidates: [],
    });
  }
  return success({ placed: placed.value, curve, noise: prepared.noise(placed.value.segment), signal });
}

export function signalMissing(run: PreparedRun, signal: SignalName): PlaceFailure {
  const has = [...run.signals.keys()].join(', ');
  return {
    code: 'signal-missing',
    token: 'head',
    message: `The run has no ${signal}; it has ${has === '' ? 'no signal' : has}.`,
    candidates: [],
  };
}

function placeOn(
  run: PreparedRun,
  place: Place,
  signal: SignalName,
  span: Amount | null,
): Outcome<Placed, PlaceFailure> {
  const window = place.window;
  if (window === null) return wholeSegment(run, place);
  if (window.rule === 'range') return placeRange(run, window.range, place);
  return placeAround(run, window, place, signal, span);
}

/** A place without a window: the whole segment, by default the first heating. */
function wholeSegment(run: PreparedRun, place: Place): Outcome<Placed, PlaceFailure> {
  const name = place.segment ?? { direction: 'heating' as const, index: 1 };
  const segment = findSegment(run, name);
  if (segment === null) return failed(segmentMissing(run, name));
  const window = { from: segment.start, to: segment.end };
  const hold = segment.direction === 'hold';
  return success({
    segment,
    window,
    shown: hold
      ? { from: 0, to: (segment.end - segment.start) / 60, unit: 'min', rule: `whole ${segment.name}` }
      : { from: segment.from, to: segment.to, unit: '°C', rule: `whole ${segment.name}` },
    secondsPerKelvin: secondsPerKelvin(run, segment, window),
  });
}

function placeAround(
  run: PreparedRun,
  window: Extract<PlaceWindow, { rule: 'around' }>,
  place: Place,
  signal: SignalName,
  span: Amount | null,
): Outcome<Placed, PlaceFailure> {
  const time = isTime(window.at);
  const segment = segmentAround(run, window.at, place);
  if (!segment.ok) return segment;
  const map = run.map(segment.value);
  const at =
    time || map === null ? secondsOf(window.at) + segment.value.start : timeAtClamped(map, celsiusOf(window.at));
  const per = segment.value.direction === 'hold' || map === null ? null : 1 / Math.max(Math.abs(map.rateAt(at)), 1e-9);
  const width = (amount: Amount | null, fallback: { kelvin: number; seconds: number }) => {
    if (amount !== null && isTime(amount)) return secondsOf(amount);
    if (per === null) return fallback.seconds;
    return (amount === null ? fallback.kelvin : amount.value * (amount.unit?.factor ?? 1)) * per;
  };
  const prepared = run.signals.get(signal)!;
  const curve = prepared.curve(segment.value);
  const noise = prepared.noise(segment.value);
  const options = { at, within: width(window.within, defaultWithin), span: width(span, defaults.span) };
  const found: Window | null =
    curve === null
      ? null
      : signal === 'mass'
        ? // ≤ 0.005 %/K of the initial mass, as a slope per second (language.md 4).
          aroundStep(curve, noise, {
            ...options,
            levelSlope: ((0.005 / 100) * run.mass.reference) / (per ?? 6),
            relativeRate: 0.02,
            smooth: width(null, defaults.smooth),
          })
        : aroundPeak(curve, noise, options);
  if (found === null) {
    return failed({
      code: 'around-not-found',
      token: 'window',
      message: `No level stretch of ${signal} was found on both sides of ${window.at.text} within ${window.within?.text ?? `${defaultWithin.kelvin} K`} in ${segment.value.name}.`,
      candidates: [],
    });
  }
  const shown = (t: number) => (map === null || per === null ? (t - segment.value.start) / 60 : map.temperatureAt(t));
  const withinText = window.within === null ? '' : ` within ${window.within.text}`;
  return success({
    segment: segment.value,
    window: found,
    shown: {
      from: shown(found.from),
      to: shown(found.to),
      unit: per === null ? 'min' : '°C',
      rule: `around ${window.at.text}${withinText}`,
    },
    secondsPerKelvin: secondsPerKelvin(run, segment.value, found),
  });
}

function segmentAround(run: PreparedRun, at: Amount, place: Place): Outcome<Segment, PlaceFailure> {
  if (place.segment !== null) {
    const segment = findSegment(run, place.segment);
    return segment === null ? failed(segmentMissing(run, place.segment)) : success(segment);
  }
  if (isTime(at)) {
    const t = secondsOf(at);
    const holder = run.segments.find((s) => s.start <= t && t <= s.end);
    return holder === undefined ? failed(outside(run, at)) : success(holder);
  }
  const degrees = celsiusOf(at);
  const holding = run.segments.filter((s) => s.direction === 'heating' && degrees > s.from && degrees < s.to);
  if (holding.length === 0) return failed(outside(run, at));
  if (holding.length > 1) {
    return failed({
      code: 'window-ambiguous-segment',
      token: 'window',
      message: `${at.text} lies in ${holding.map((s) => s.name).join(' and in ')}: say which.`,
      candidates: holding.map((s) => s.name),
    });
  }
  return success(holding[0]);
}

function outside(run: PreparedRun, at: Amount): PlaceFailure {
  const spans = run.segments
    .filter((s) => s.direction === 'heating')
    .map((s) => `${s.name} spans ${numberText(s.from, 1)} to ${numberText(s.to, 1)} °C`)
    .join('; ');
  return {
    code: 'window-outside-run',
    token: 'window',
    message: `${at.text} lies outside the heatings of the run${spans === '' ? '' : ` (${spans})`}.`,
    candidates: [],
  };
}
