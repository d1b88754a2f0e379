import type { Range } from '../../protocol/view';

/**
 * What the plot reads of a run's curves: names, units, ranges, never a sample. The engine's curves of a run are such an
 * object as they stand; tests use small ones of their own.
 */
export interface PlotCurves {
  readonly endothermic: 'up' | 'down' | null;
  readonly parts: readonly PlotPart[];
  readonly lanes: readonly PlotLane[];
  /** The whole record, s. */
  readonly time: Range;
  /** °C at a time (s) of a part; null where the run has no temperature. */
  temperatureAt(part: string, time: number): number | null;
  /** s at a temperature (°C) of a part, that of the nearer end beyond it; null in a hold. */
  timeAt(part: string, temperature: number): number | null;
}

export interface PlotPart {
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

export interface PlotLane {
  readonly id: string;
  readonly signal: string;
  /** The usual one first. */
  readonly units: readonly string[];
  readonly curves: readonly { readonly id: string; readonly part: string; readonly points: number }[];
  /** From the stored unit, or from `of`, to `unit` in one part; null where there is no way. */
  factor(unit: string, part: string, of?: string): number | null;
  extent(unit: string, parts: readonly string[]): Range | null;
}

/** The unit a lane is shown in: the one chosen where the lane has it, else its usual one. */
export function unitOf(lane: Pick<PlotLane, 'id' | 'units'>, units: Readonly<Record<string, string>>): string {
  const chosen = units[lane.id];
  return chosen !== undefined && lane.units.includes(chosen) ? chosen : lane.units[0];
}
