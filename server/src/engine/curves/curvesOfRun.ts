import { timeAtClamped } from '../../evaluation/timeAt';
import type { PreparedRun } from '../../evaluation/preparedRun';
import type { Range } from '../../protocol/view';
import { unitFactor, unitsOf, type LaneMass } from './laneUnits';
import type { CurveLane, RunCurve, RunCurves, RunPart } from './runCurves';
import type { StoredCurve } from './storedCurve';
import { storedLanes, wholeRun, type StoredLane } from './storedRun';

/**
 * The curves of an evaluated run: blanks subtracted, masked samples gone, one curve for each part and lane (more where a
 * mask leaves a gap), heat flow as the file has it: endothermic effects point as the run states.
 *
 * @param key what the ids of curves begin with, where the run is laid over another
 * @param endothermic which way endothermic effects are to point; a run that states none is drawn as exported
 */
export function curvesOfRun(
  run: PreparedRun,
  key = '',
  endothermic: 'up' | 'down' | null = run.endothermic,
): RunCurves {
  const parts = partsOf(run);
  const rates = new Map(parts.map((p) => [p.name, p.rate]));
  const facing = run.endothermic === null ? null : (endothermic ?? run.endothermic);
  const mass: LaneMass = { reference: run.mass.reference, milligrams: run.mass.milligrams?.value ?? null };
  const lanes = storedLanes(run).map((lane) =>
    laneOf(lane, { key, mass, rates, sign: lane.signal === 'heatflow' && facing === 'down' ? -1 : 1 }),
  );
  const byId = new Map(lanes.flatMap((lane) => lane.curves.map((curve) => [curve.id, curve] as const)));
  const segment = (name: string) => run.segments.find((s) => s.name === name) ?? null;
  return {
    key,
    endothermic: facing,
    parts,
    lanes,
    time: { from: run.time[0] ?? 0, to: run.time[run.time.length - 1] ?? 0 },
    curve: (id) => byId.get(id) ?? null,
    lane: (id) => lanes.find((lane) => lane.id === id) ?? null,
    temperatureAt(part, time) {
      const of = segment(part);
      return of === null ? null : (run.map(of)?.temperatureAt(time) ?? null);
    },
    timeAt(part, temperature) {
      const of = segment(part);
      const map = of === null || of.direction === 'hold' ? null : run.map(of);
      return map === null ? null : timeAtClamped(map, temperature);
    },
  };
}

interface LaneContext {
  readonly key: string;
  readonly mass: LaneMass;
  readonly rates: ReadonlyMap<string, number | null>;
  readonly sign: 1 | -1;
}

function laneOf(stored: StoredLane, { key, mass, rates, sign }: LaneContext): CurveLane {
  const id: string = stored.signal;
  const factor = (unit: string, part: string, of?: string): number | null => {
    const size = unitFactor(of ?? stored.unit, unit, mass, rates.get(part) ?? null);
    return size === null ? null : sign * size;
  };
  const largest = (): number =>
    stored.curves.reduce((most, c) => Math.max(most, Math.abs(c.range().low), Math.abs(c.range().high)), 0);
  return {
    id,
    signal: stored.signal,
    units: unitsOf(stored.signal, stored.unit, mass, largest),
    curves: runCurvesOf(stored.curves, key, id, factor),
    factor,
    extent: (unit, parts) => extentOf(stored.curves, parts, (part) => factor(unit, part)),
  };
}

/** The curves of a lane with their ids: `mass/heating 1`; `mass/heating 1#2` behind a gap. */
export function runCurvesOf(
  stored: readonly StoredCurve[],
  key: string,
  lane: string,
  factor: (unit: string, part: string) => number | null,
): readonly RunCurve[] {
  const counts = new Map<string, number>();
  return stored.map((curve) => {
    const count = (counts.get(curve.part) ?? 0) + 1;
    counts.set(curve.part, count);
    return {
      id: `${key}${lane}/${curve.part}${count === 1 ? '' : `#${count}`}`,
      lane,
      part: curve.part,
      points: curve.time.length,
      time: curve.time,
      values: curve.values,
      drawn: (abscissa) => curve.drawn(abscissa),
      factor: (unit) => factor(unit, curve.part),
    };
  });
}

/** Least and greatest value of curves in the parts named; null where there is none. */
export function extentOf(
  stored: readonly StoredCurve[],
  parts: readonly string[],
  factorOf: (part: string) => number | null,
): Range | null {
  let extent: Range | null = null;
  for (const curve of stored) {
    const factor = parts.includes(curve.part) ? factorOf(curve.part) : null;
    if (factor === null) continue;
    const { low, high } = curve.range();
    const from = Math.min(low * factor, high * factor);
    const to = Math.max(low * factor, high * factor);
    extent = extent === null ? { from, to } : { from: Math.min(extent.from, from), to: Math.max(extent.to, to) };
  }
  return extent;
}

function partsOf(run: PreparedRun): readonly RunPart[] {
  if (run.segments.length > 0) {
    return run.segments.map(({ name, start, end, from, to, rate }) => ({ name, start, end, from, to, rate }));
  }
  const [start, end] = [run.time[0] ?? 0, run.time[run.time.length - 1] ?? 0];
  return [{ name: wholeRun, start, end, from: NaN, to: NaN, rate: null }];
}
