import { isDimensionless, sameDimension } from './dimension';
import type { Kind, Unit } from './unit';

/** A value in SI. A point in °C becomes K. */
export function toSI(value: number, unit: Unit): number {
  return value * unit.factor + unit.offset;
}

/** A value in SI expressed in `unit`. */
export function fromSI(value: number, unit: Unit): number {
  return (value - unit.offset) / unit.factor;
}

/** A difference (an uncertainty, a width) in SI: the offset of °C has no part in it. */
export function differenceToSI(value: number, unit: Unit): number {
  return value * unit.factor;
}

/** A difference in SI expressed in `unit`. */
export function differenceFromSI(value: number, unit: Unit): number {
  return value / unit.factor;
}

/** From one unit to another of the same dimension; null where the dimensions differ. */
export function convert(value: number, from: Unit, to: Unit): number | null {
  if (!sameDimension(from.dimension, to.dimension)) return null;
  // Values in one unit stay bit for bit what they are.
  if (from.factor === to.factor && from.offset === to.offset) return value;
  return fromSI(toSI(value, from), to);
}

/** As `convert`, for a difference. */
export function convertDifference(value: number, from: Unit, to: Unit): number | null {
  if (!sameDimension(from.dimension, to.dimension)) return null;
  if (from.factor === to.factor) return value;
  return differenceFromSI(differenceToSI(value, from), to);
}

/** Only °C standing alone is a point on a scale; K is a difference that may stand for a point. */
export function isTemperaturePoint(unit: Unit): boolean {
  return unit.offset !== 0;
}

/** What a literal in `unit` is; null: no unit was written. */
export function kindOf(unit: Unit | null): Kind {
  if (unit === null) return 'number';
  if (isTemperaturePoint(unit)) return 'temperature';
  if (!isDimensionless(unit.dimension)) return 'quantity';
  return unit.text === '%' || unit.text === 'ppm' ? 'fraction' : 'number';
}
