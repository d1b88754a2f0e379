import { equalExtremes, type EqualExtremes } from './metrics/saturation';
import { findJumps, type Jump } from './metrics/jumps';
import { residualNoise, type ResidualNoise } from './metrics/residualNoise';
import { samplingMetrics, type SamplingMetrics } from './metrics/sampling';
import { temperatureReversals, type Reversal } from './metrics/reversals';
import type { RawRun, Segment } from './run';

export type { EqualExtremes, Jump, ResidualNoise, Reversal, SamplingMetrics };

/** Plain numbers about one signal, before anything is evaluated. */
export interface SignalMetrics {
  readonly noise: ResidualNoise;
  readonly extremes: EqualExtremes | null;
  readonly jumps: readonly Jump[];
  /** Share of the cells that hold no number. */
  readonly missing: number;
}

/** The raw-signal check of a run, for the findings on its data. */
export interface RunMetrics {
  readonly sampling: SamplingMetrics | null;
  readonly reversals: readonly Reversal[];
  /** One entry a measured column, in the order of the file's columns. */
  readonly signals: ReadonlyMap<string, SignalMetrics>;
  /** Share of the cells of all read columns that are text. */
  readonly badCells: number;
}

/** Measures a run as it was read. `time` in s (null: the file has none and no rate is stated). */
export function runMetrics(run: RawRun, time: Float64Array | null, segments: readonly Segment[]): RunMetrics {
  const temperature = run.columns.find(({ signal }) => signal === 'temperature')?.values ?? null;
  const signals = new Map<string, SignalMetrics>();
  for (const { signal, values } of run.columns) {
    if (signal === 'time' || signal === 'temperature') continue;
    signals.set(signal, signalMetrics(time, values));
  }
  const cells = run.points * run.columns.length;
  return {
    sampling: time === null ? null : samplingMetrics(time, temperature),
    reversals: time === null || temperature === null ? [] : temperatureReversals(time, temperature, segments),
    signals,
    badCells: cells === 0 ? 0 : run.badCells.count / cells,
  };
}

export function signalMetrics(time: Float64Array | null, values: Float64Array): SignalMetrics {
  let missing = 0;
  for (const value of values) if (Number.isNaN(value)) missing++;
  const noise: ResidualNoise = time === null ? { sigma: NaN, neighbours: null } : residualNoise(time, values);
  return {
    noise,
    extremes: equalExtremes(values),
    jumps: time === null ? [] : findJumps(time, values, noise.sigma),
    missing: values.length === 0 ? 0 : missing / values.length,
  };
}
