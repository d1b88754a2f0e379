import type { Curve, Window } from '../analysis/curve';
import type { Noise } from '../analysis/noise';
import type { SignalName } from '../language/model';
import type { RawRun, Segment, StoredUnit } from '../runs/run';
import type { TemperatureMap } from '../runs/temperatureMap';
import type { BlankEffect } from './blankEffect';

/** A run as the evaluators see it: in fixed units, blanks subtracted, masked rows gone, cut into segments. */
export interface PreparedRun {
  /** Content key of everything in it: data, blanks, joins, readings, clauses. */
  readonly key: string;
  /** What to call this run in influences that name it: the file's name without ending. */
  readonly stem: string;
  readonly raw: RawRun;
  /** s, the file's own time (or from the stated rate), per row. */
  readonly time: Float64Array;
  /** °C, per row; null where the file has none. */
  readonly temperature: Float64Array | null;
  readonly segments: readonly Segment[];
  readonly signals: ReadonlyMap<SignalName, PreparedSignal>;
  readonly mass: InitialMass;
  readonly endothermic: 'up' | 'down' | null;
  readonly calibrated: readonly CalibratedRange[];
  /** Ranges taken out by `mask`, in s. */
  readonly masked: readonly Window[];
  map(segment: Segment): TemperatureMap | null;
}

export interface PreparedSignal {
  readonly signal: SignalName;
  readonly unit: StoredUnit;
  /** Blanks subtracted from this signal; null where none. */
  readonly blank: BlankEffect | null;
  /** Checked curve of one segment, or of the whole run (null); null where fewer than two good rows. */
  curve(segment: Segment | null): Curve | null;
  noise(segment: Segment | null): Noise;
  /** First good value. */
  readonly first: number;
}

/** What percentages refer to by default. */
export interface InitialMass {
  /** In the unit of the mass signal: mg, or 1 for exported fractions. */
  readonly reference: number;
  /** Standard uncertainty of it, and the influence it belongs to. */
  readonly u: number;
  readonly input: string;
  readonly source: 'weighed' | 'first reading' | 'exported';
  /** mg where known: weighed, or the first reading of a mass signal in mg. */
  readonly milligrams: { readonly value: number; readonly u: number; readonly input: string } | null;
}

export interface CalibratedRange {
  readonly signal: SignalName;
  /** °C. */
  readonly from: number;
  readonly to: number;
  /** Standard uncertainty of the scale: absolute (K, mg) or relative (fraction); null: none stated. */
  readonly u: { readonly value: number; readonly relative: boolean } | null;
}
