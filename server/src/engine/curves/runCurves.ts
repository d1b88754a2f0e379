import type { Abscissa, Range } from '../../protocol/view';
import type { Ascending } from './ascending';
import type { Drawn } from './samplesIn';

/**
 * What a plot needs of one evaluated run: its lanes with their curves, unit by unit. Everything is computed from the
 * prepared run when it is first asked for; no reading is copied or changed.
 */
export interface RunCurves {
  /** Stands before the ids of curves: empty for the run itself, else what tells an overlaid one. */
  readonly key: string;
  /** Which way endothermic effects point in the picture; null: not declared. */
  readonly endothermic: 'up' | 'down' | null;
  readonly parts: readonly RunPart[];
  /** mass, rate, heatflow, ions and absorbances by number, temperature: those that the run has. */
  readonly lanes: readonly CurveLane[];
  curve(id: string): RunCurve | null;
  lane(id: string): CurveLane | null;
  /** °C at a time (s) of a part, from the fitted programme; null where the run has no temperature. */
  temperatureAt(part: string, time: number): number | null;
  /** The time (s) at which a part passes a temperature, that of its nearer end beyond it; null in a hold. */
  timeAt(part: string, temperature: number): number | null;
  /** The whole record, s. */
  readonly time: Range;
}

/** A part of the programme, or the whole run where it has no temperature. */
export interface RunPart {
  readonly name: string;
  /** s of the file's own time. */
  readonly start: number;
  readonly end: number;
  /** °C; NaN without a temperature. */
  readonly from: number;
  readonly to: number;
  /** K/min; null in a hold. */
  readonly rate: number | null;
}

export interface CurveLane {
  /** `mass`, `rate`, `heatflow`, `ion(44)`; `difference:mass`. */
  readonly id: string;
  readonly signal: string;
  /** Units it can be shown in, the usual one first. */
  readonly units: readonly string[];
  readonly curves: readonly RunCurve[];
  /**
   * What a stored value is multiplied by to be in `unit`, in one part; null where it has no such unit (a rate per kelvin
   * in a hold). `of`: the unit the value is in where that is not the stored one (`mg/s` of a rate).
   */
  factor(unit: string, part: string, of?: string): number | null;
  /** Range of the data in a unit over the parts named; null where they hold no sample. */
  extent(unit: string, parts: readonly string[]): Range | null;
}

/** Samples of one lane in one part that follow one another without a gap. */
export interface RunCurve {
  readonly id: string;
  readonly lane: string;
  readonly part: string;
  readonly points: number;
  /** s, ascending, by sample. */
  readonly time: Float64Array;
  /** As stored, by sample. */
  readonly values: Float64Array;
  /** null: not to be drawn over it. */
  drawn(abscissa: Abscissa): Drawn | null;
  factor(unit: string): number | null;
}

/** The index of the sample at a place of the drawn order. */
export function sampleAt({ order }: Ascending, place: number): number {
  return order === null ? place : order[place];
}
