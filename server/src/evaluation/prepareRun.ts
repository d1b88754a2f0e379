import type { Window } from '../analysis/curve';
import { estimateNoise } from '../analysis/estimateNoise';
import { silent, type Noise } from '../analysis/noise';
import type { Counters } from '../base/counters';
import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import type { SignalName } from '../language/model';
import type { Program } from '../language/program';
import { differenceToSI, toSI } from '../quantities/convert';
import { dimensions, sameDimension } from '../quantities/dimension';
import { checkedColumn } from '../runs/checkedColumn';
import { findSegments } from '../runs/segments';
import { temperatureMap, type TemperatureMap } from '../runs/temperatureMap';
import { timeFromRate } from '../runs/timeFromRate';
import { timeAtClamped } from './timeAt';
import type { Column, RawRun, Segment } from '../runs/run';
import { blankEffects, type BlankInput } from './blankEffect';
import { joinedSignals, type JoinInput } from './joinedSignals';
import { remembered, type Memo } from './memo';
import { celsiusOf, isTime, secondsOf } from './place';
import type { CalibratedRange, InitialMass, PreparedRun, PreparedSignal } from './preparedRun';
import { rateSignal } from './rateSignal';
import type { SourceSignal } from './sourceSignal';

export interface Prepared {
  readonly run: PreparedRun;
  readonly findings: readonly Finding[];
  /** Of joined files: largest difference of both temperatures at equal times, K. */
  readonly joinMismatches: ReadonlyMap<string, number | null>;
}

/**
 * Puts a run together from its files: time (or the stated rate), segments, joined signals, blanks subtracted, masked
 * rows gone, heat flow endothermic positive. Remembered by content: identities of the data and every clause that is read.
 */
export function prepareRun(
  program: Program,
  raw: RawRun,
  joins: readonly JoinInput[],
  blanks: readonly BlankInput[],
  memo: Memo,
  counters: Counters,
): Prepared {
  const key = preparedKey(program, raw, joins, blanks);
  return remembered(memo, key, () => {
    counters.add('preparations');
    return build(program, raw, joins, blanks, key);
  });
}

function preparedKey(
  program: Program,
  raw: RawRun,
  joins: readonly JoinInput[],
  blanks: readonly BlankInput[],
): string {
  const identity = (data: JoinInput['data']) =>
    data.ok ? [data.value.identity, data.value.interpretation] : [data.failure.problem];
  const clauses = [
    program.run,
    ...program.joins,
    ...program.columns,
    ...program.readings,
    ...program.blanks,
    ...program.masks,
  ];
  return JSON.stringify([
    'prepared',
    raw.identity,
    raw.interpretation,
    joins.map((j) => identity(j.data)),
    blanks.map((b) => [...identity(b.data), b.conditions]),
    clauses.map((c) => c?.canonical ?? ''),
  ]);
}

function build(
  program: Program,
  raw: RawRun,
  joins: readonly JoinInput[],
  blankInputs: readonly BlankInput[],
  key: string,
): Prepared {
  const findings: Finding[] = [];
  const runId = program.run!.id;
  const statement = program.run!.statement;
  const column = (signal: SignalName) => raw.columns.find((c) => c.signal === signal) ?? null;
  const temperature = column('temperature')?.values ?? null;
  const time = timeOf(program, column('time'), temperature);
  if (time === null) {
    findings.push(
      makeFinding(
        'signal-missing',
        { statement: runId, token: 'file' },
        `${raw.interpretation.columns.map((c) => c.header).join(', ')}: there is no time. Write the heating rate of the programme under run: "rate 10 K/min".`,
        {
          fixes: [
            {
              title: 'Write the heating rate',
              edits: [{ edit: 'insert-clause', statement: runId, text: 'rate 10 K/min' }],
              safe: false,
            },
          ],
        },
      ),
    );
  }
  const axis = time ?? indices(raw.points);
  const segments = temperature === null || time === null ? [] : findSegments(axis, temperature);
  if (temperature === null) {
    findings.push(
      makeFinding(
        'signal-missing',
        { statement: runId, token: 'file' },
        `${raw.interpretation.columns.map((c) => c.header).join(', ')}: there is no temperature, so windows can only be given in minutes.`,
      ),
    );
  }
  const maps = new Map<string, TemperatureMap | null>();
  const map = (segment: Segment): TemperatureMap | null => {
    if (temperature === null) return null;
    const known = maps.get(segment.name);
    if (known !== undefined) return known;
    const made = temperatureMap(axis, temperature, segment);
    maps.set(segment.name, made);
    return made;
  };
  const masked = maskedWindows(program, segments, map, axis);
  const stem = stemOf(statement.file);
  const sources: SourceSignal[] = [];
  for (const c of raw.columns) {
    if (c.signal !== 'time' && c.signal !== 'temperature') {
      sources.push({ signal: c.signal, unit: c.unit, time: axis, values: c.values });
    }
  }
  const joined = joinedSignals(program, joins, { time: axis, temperature, segments, map });
  for (const source of joined.signals) if (!sources.some((s) => s.signal === source.signal)) sources.push(source);

  const blanks = blankEffects(program, blankInputs, sources, { time: axis, temperature, segments });
  findings.push(...blanks.findings);
  const direction = statement.endothermic === 'down' ? -1 : 1;
  const signals = new Map<SignalName, PreparedSignal>();
  if (time !== null) {
    for (const source of sources) {
      const corrected = blanks.correct(source);
      const sign = source.signal === 'heatflow' ? direction : 1;
      signals.set(
        source.signal,
        preparedSignal(source, sign === 1 ? corrected : corrected.map((v) => -v), masked, blanks.of(source.signal)),
      );
    }
    if (temperature !== null) {
      signals.set(
        'temperature',
        preparedSignal(
          { signal: 'temperature', unit: '°C', time: axis, values: temperature },
          temperature,
          masked,
          null,
        ),
      );
    }
  }
  const mass = initialMassOf(program, signals.get('mass') ?? null, stem);
  const massSignal = signals.get('mass');
  if (massSignal !== undefined) signals.set('rate', rateSignal(massSignal, mass, map));
  return {
    findings,
    joinMismatches: joined.mismatches,
    run: {
      key,
      stem,
      raw,
      time: axis,
      temperature,
      segments,
      signals,
      mass,
      endothermic: statement.endothermic,
      calibrated: calibratedRanges(program),
      masked,
      map,
    },
  };
}

/** The file's time, or the way in temperature over the stated rate. */
function timeOf(program: Program, column: Column | null, temperature: Float64Array | null): Float64Array | null {
  if (column !== null) return column.values;
  const rate = program.run?.statement.rate ?? null;
  if (rate === null || temperature === null || rate.unit === null) return null;
  const kelvinPerMinute = Math.abs(differenceToSI(rate.value, rate.unit)) * 60;
  return kelvinPerMinute > 0 ? timeFromRate(temperature, kelvinPerMinute) : null;
}

function indices(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => i);
}

function preparedSignal(
  source: SourceSignal,
  values: Float64Array,
  masked: readonly Window[],
  blank: PreparedSignal['blank'],
): PreparedSignal {
  const curves = new Map<string, ReturnType<PreparedSignal['curve']>>();
  const noises = new Map<string, Noise>();
  const name = (segment: Segment | null) => segment?.name ?? '';
  const curve = (segment: Segment | null) => {
    const known = curves.get(name(segment));
    if (known !== undefined) return known;
    const window = segment === null ? null : { from: segment.start, to: segment.end };
    const made = checkedColumn(source.time, values, window, masked);
    curves.set(name(segment), made);
    return made;
  };
  let first = NaN;
  for (let i = 0; i < values.length && Number.isNaN(first); i++) first = values[i];
  return {
    signal: source.signal,
    unit: source.unit,
    blank,
    first,
    curve,
    noise: (segment) => {
      const known = noises.get(name(segment));
      if (known !== undefined) return known;
      const of = curve(segment);
      const made = of === null ? silent : estimateNoise(of);
      noises.set(name(segment), made);
      return made;
    },
  };
}

function maskedWindows(
  program: Program,
  segments: readonly Segment[],
  map: (segment: Segment) => TemperatureMap | null,
  axis: Float64Array,
): Window[] {
  const windows: Window[] = [];
  for (const { statement } of program.masks) {
    const { from, to } = statement.range;
    if (isTime(from)) {
      windows.push(sorted(secondsOf(from), secondsOf(to)));
      continue;
    }
    const low = Math.min(celsiusOf(from), celsiusOf(to));
    const high = Math.max(celsiusOf(from), celsiusOf(to));
    // A temperature range is left out wherever it occurs: the statement names no segment.
    for (const segment of segments) {
      const bottom = Math.min(segment.from, segment.to);
      const top = Math.max(segment.from, segment.to);
      if (segment.direction === 'hold') {
        if (bottom >= low && top <= high) windows.push({ from: segment.start, to: segment.end });
        continue;
      }
      if (high < bottom || low > top) continue;
      const of = map(segment);
      if (of !== null) windows.push(sorted(timeAtClamped(of, low), timeAtClamped(of, high)));
    }
  }
  return windows.filter((w) => w.to >= axis[0]);
}

function sorted(a: number, b: number): Window {
  return a <= b ? { from: a, to: b } : { from: b, to: a };
}

function initialMassOf(program: Program, mass: PreparedSignal | null, stem: string): InitialMass {
  const weighed = program.run?.statement.mass ?? null;
  const unit = weighed?.unit ?? null;
  const input = `mass of ${stem}`;
  // A number that is no mass, as while it is typed, weighs nothing: its unit is a finding, and the first reading counts.
  const milligrams =
    weighed === null || unit === null || !sameDimension(unit.dimension, dimensions.mass)
      ? null
      : {
          value: toSI(weighed.value, unit) * 1e6,
          u: weighed.u === null ? 0 : differenceToSI(weighed.u, unit) * 1e6,
          input,
        };
  if (mass?.unit === '1') return { reference: 1, u: 0, input, source: 'exported', milligrams };
  if (milligrams !== null)
    return { reference: milligrams.value, u: milligrams.u, input, source: 'weighed', milligrams };
  const first = mass?.first ?? NaN;
  const u = mass === null ? 0 : mass.noise(null).sigma;
  const reading = `first reading of ${stem}`;
  const known = Number.isFinite(first) ? first : 1;
  return {
    reference: known,
    u,
    input: reading,
    source: 'first reading',
    milligrams: mass?.unit === 'mg' ? { value: known, u, input: reading } : null,
  };
}

function calibratedRanges(program: Program): CalibratedRange[] {
  return (program.run?.statement.calibrated ?? []).map((c) => {
    const ends = [celsiusOf(c.range.from), celsiusOf(c.range.to)];
    const u = c.u;
    const relative = u !== null && u.unit !== null && u.unit.dimension.every((e) => e === 0);
    return {
      signal: c.signal,
      from: Math.min(...ends),
      to: Math.max(...ends),
      u:
        u === null || u.unit === null
          ? null
          : { value: differenceToSI(u.value, u.unit) * (c.signal === 'mass' && !relative ? 1e6 : 1), relative },
    };
  });
}

/** The file's name without folders and ending: how influences name a run. */
export function stemOf(file: string): string {
  const name = file.split(/[\\/]/).pop() ?? file;
  const dot = name.lastIndexOf('.');
  return dot > 0 ? name.slice(0, dot) : name;
}
