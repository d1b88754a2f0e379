import type { Column, Segment } from './run';
import { cleanCurve } from './cleanCurve';
import { medianInterval, resample, type Stretch } from './resample';
import { temperatureMap } from './temperatureMap';

/** The signals of a second file on the rows of a run. */
export interface JoinedSignals {
  /** The columns of the second file without its time and temperature; NaN where it has nothing. */
  readonly columns: readonly Column[];
  /** Stretches of the run's time (s), or of its temperature (°C), without a value, of the first column. */
  readonly missing: readonly Stretch[];
  /** Largest difference of the temperatures at equal times (K), and the run's time there; null: not comparable. */
  readonly mismatch: { readonly difference: number; readonly at: number } | null;
}

export interface JoinSource {
  readonly time: Float64Array | null;
  readonly temperature: Float64Array | null;
  readonly segments: readonly Segment[];
}

/**
 * Joins by time: the second file's clock plus `offset` (s) is the run's. Linear between its samples; gaps over a minute
 * (or ten of its intervals) stay empty. Null: one of them has no time.
 */
export function joinOnTime(
  run: JoinSource,
  other: JoinSource,
  columns: readonly Column[],
  offset: number,
): JoinedSignals | null {
  if (run.time === null || other.time === null) return null;
  const runTime = run.time;
  let missing: readonly Stretch[] = [];
  const onRows = (values: Float64Array): { values: Float64Array; missing: readonly Stretch[] } => {
    const { curve } = cleanCurve(other.time!, values, 0, values.length);
    if (curve === null) return { values: new Float64Array(runTime.length).fill(NaN), missing: [] };
    const x = offset === 0 ? curve.x : curve.x.map((t) => t + offset);
    const result = resample(x, [curve.y], runTime, Math.max(60, 10 * medianInterval(x)));
    return { values: result.values[0], missing: result.missing };
  };
  const joined = measured(columns).map((column, k) => {
    const result = onRows(column.values);
    if (k === 0) missing = result.missing;
    return { ...column, values: result.values };
  });
  let mismatch: JoinedSignals['mismatch'] = null;
  if (run.temperature !== null && other.temperature !== null) {
    const theirs = onRows(other.temperature).values;
    for (let i = 0; i < theirs.length; i++) {
      const difference = Math.abs(theirs[i] - run.temperature[i]);
      if (difference > (mismatch?.difference ?? -1)) mismatch = { difference, at: runTime[i] };
    }
  }
  return { columns: joined, missing, mismatch };
}

/**
 * Joins by temperature, for files without a common clock: row by row inside each ramp, with the ramp of the same name of
 * the second file. Rows in holds and in ramps that it lacks stay empty.
 */
export function joinOnTemperature(
  run: JoinSource,
  other: JoinSource,
  columns: readonly Column[],
): JoinedSignals | null {
  if (run.time === null || run.temperature === null || other.time === null || other.temperature === null) return null;
  const joined = measured(columns).map((column) => ({
    ...column,
    values: new Float64Array(run.time!.length).fill(NaN),
  }));
  const missing: Stretch[] = [];
  for (const own of run.segments) {
    if (own.direction === 'hold') continue;
    const their = other.segments.find(({ name }) => name === own.name);
    if (their === undefined) {
      missing.push({ from: own.from, to: own.to });
      continue;
    }
    const ownMap = temperatureMap(run.time, run.temperature, own);
    const theirMap = temperatureMap(other.time, other.temperature, their);
    const at = new Float64Array(own.last - own.first);
    for (let i = 0; i < at.length; i++) {
      at[i] = theirMap.timeAt(ownMap.temperatureAt(run.time[own.first + i])) ?? NaN;
    }
    measured(columns).forEach((column, k) => {
      const { curve } = cleanCurve(other.time!, column.values, their.first, their.last);
      if (curve === null) return;
      const result = resample(curve.x, [curve.y], at, Math.max(60, 10 * medianInterval(curve.x)));
      joined[k].values.set(result.values[0], own.first);
    });
  }
  return { columns: joined, missing, mismatch: null };
}

function measured(columns: readonly Column[]): Column[] {
  return columns.filter(({ signal }) => signal !== 'time' && signal !== 'temperature');
}
