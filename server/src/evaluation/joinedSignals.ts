import type { Outcome } from '../base/outcome';
import type { JoinStatement } from '../language/model';
import type { Effective, Program } from '../language/program';
import { atTimes } from '../runs/atTimes';
import type { RawRun, ReadingProblem, Segment } from '../runs/run';
import type { TemperatureMap } from '../runs/temperatureMap';
import { secondsOf } from './place';
import type { SourceSignal } from './sourceSignal';

export interface JoinInput {
  readonly statement: string;
  readonly data: Outcome<RawRun, ReadingProblem>;
}

/** The run that the files are joined to. */
export interface JoinTarget {
  readonly time: Float64Array;
  readonly temperature: Float64Array | null;
  readonly segments: readonly Segment[];
  readonly map: (segment: Segment) => TemperatureMap | null;
}

export interface Joined {
  readonly signals: readonly SourceSignal[];
  /** Largest difference of both temperatures at equal times, K; null where it cannot be told. */
  readonly mismatches: ReadonlyMap<string, number | null>;
}

/**
 * Signals of joined files on their own readings, never resampled: only their clock is set to that of the run, by the
 * stated offset, or through the temperature where `on temperature` is written.
 */
export function joinedSignals(program: Program, joins: readonly JoinInput[], target: JoinTarget): Joined {
  const signals: SourceSignal[] = [];
  const mismatches = new Map<string, number | null>();
  for (const join of joins) {
    const effective = program.joins.find((j) => j.id === join.statement);
    if (effective === undefined || !join.data.ok) continue;
    const raw = join.data.value;
    const clock = clockOf(effective, raw, target);
    if (clock === null) continue;
    const temperature = raw.columns.find((c) => c.signal === 'temperature')?.values ?? null;
    mismatches.set(join.statement, mismatchOf(clock, temperature, target));
    for (const column of raw.columns) {
      if (column.signal === 'time' || column.signal === 'temperature') continue;
      signals.push({ signal: column.signal, unit: column.unit, time: clock, values: column.values });
    }
  }
  return { signals, mismatches };
}

function clockOf(effective: Effective<JoinStatement>, raw: RawRun, target: JoinTarget): Float64Array | null {
  const { on, offset } = effective.statement;
  const time = raw.columns.find((c) => c.signal === 'time')?.values ?? null;
  const temperature = raw.columns.find((c) => c.signal === 'temperature')?.values ?? null;
  if (on === 'time' && time !== null) {
    const shift = offset === null ? 0 : secondsOf(offset);
    return time.map((t) => t + shift);
  }
  if (temperature === null) return null;
  // Only the first heating passes each temperature once in a known order.
  const heating = target.segments.find((s) => s.direction === 'heating');
  const map = heating === undefined ? null : target.map(heating);
  if (heating === undefined || map === null) return null;
  return temperature.map((t) => (t < heating.from || t > heating.to ? NaN : (map.timeAt(t) ?? NaN)));
}

function mismatchOf(clock: Float64Array, temperature: Float64Array | null, target: JoinTarget): number | null {
  if (temperature === null || target.temperature === null) return null;
  const other = atTimes(target.time, target.temperature, clock);
  let largest: number | null = null;
  for (let i = 0; i < clock.length; i++) {
    const difference = Math.abs(other[i] - temperature[i]);
    if (Number.isFinite(difference) && (largest === null || difference > largest)) largest = difference;
  }
  return largest;
}
