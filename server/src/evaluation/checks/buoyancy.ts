import { fixedLimit } from '../../findings/table';
import type { CheckContext } from './context';
import { gasTimeline, periodAt, type GasPeriod } from './gasTimeline';

/** Temperature at which the densities of the table hold, K. */
const TABLE = 298.15;

/**
 * Lift of the gas on carrier and crucible, mg: the reading rises by V·ρ(25 °C)·298.15 K·(1/T₁ - 1/T₂) from T₁ to T₂ at one
 * pressure (Archimedes and the ideal gas law). The volume is a usual one for carrier and crucible (common practice), so
 * this is an estimate to compare with, not to subtract.
 */
export function lift(density: number, from: number, to: number, volume = usualVolume()): number {
  return volume * density * TABLE * (1 / (from + 273.15) - 1 / (to + 273.15));
}

/** Shift of the reading when one gas replaces another at a temperature, mg: positive where the new gas is lighter. */
export function switchShift(before: number, after: number, temperature: number, volume = usualVolume()): number {
  return (-volume * (after - before) * TABLE) / (temperature + 273.15);
}

function usualVolume(): number {
  return fixedLimit('gas-switch-step', 1);
}

export function timelineOf(context: CheckContext): readonly GasPeriod[] {
  const statement = context.program.run?.statement;
  const { time, segments } = context.run;
  return statement === undefined ? [] : gasTimeline(statement, segments, time[time.length - 1]);
}

/** Estimated lift over a stretch of the run in mg, in the gas that flows there; null where gas or temperature is not known. */
export function liftOver(context: CheckContext, from: number, to: number): number | null {
  const { temperature } = context.run;
  const density = periodAt(timelineOf(context), (from + to) / 2)?.density ?? null;
  if (temperature === null || density === null) return null;
  return lift(density, temperatureAt(context, from), temperatureAt(context, to));
}

/** °C at a time, by the row next to it. */
export function temperatureAt(context: CheckContext, time: number): number {
  const { time: t, temperature } = context.run;
  let low = 0;
  let high = t.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle] < time) low = middle + 1;
    else high = middle;
  }
  return temperature === null ? NaN : temperature[low];
}

/** Milligrams of one unit of the mass signal; null where only fractions are known. */
export function milligramsPerUnit(context: CheckContext): number | null {
  const unit = context.run.signals.get('mass')?.unit;
  if (unit === 'mg') return 1;
  return context.run.mass.milligrams?.value ?? null;
}
