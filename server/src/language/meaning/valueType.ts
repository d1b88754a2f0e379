import { isTemperaturePoint, kindOf } from '../../quantities/convert';
import { dimensionName, dimensions, isDimensionless, sameDimension } from '../../quantities/dimension';
import { parseUnit } from '../../quantities/parseUnit';
import { shownUnit } from '../../quantities/shownUnit';
import type { Dimension, Kind, Unit } from '../../quantities/unit';
import type { QuantityRecord } from '../vocabulary/quantities';

/** What a value is, known before any data: language.md 4, kinds. */
export interface ValueType {
  readonly kind: Kind;
  readonly dimension: Dimension;
  /**
   * The mass it is taken over (`initial mass`, `dried, Moisture`); `anyBasis` for a literal in %, which goes with every
   * basis; null where none has a part in it.
   */
  readonly basis: string | null;
}

export const anyBasis = 'any';

export const plainNumber: ValueType = { kind: 'number', dimension: dimensions.none, basis: null };
export const temperaturePoint: ValueType = { kind: 'temperature', dimension: dimensions.temperature, basis: null };
export const temperatureDifference: ValueType = { kind: 'quantity', dimension: dimensions.temperature, basis: null };

/** The type of a literal. */
export function typeOfUnit(unit: Unit | null): ValueType {
  const kind = kindOf(unit);
  return { kind, dimension: unit?.dimension ?? dimensions.none, basis: kind === 'fraction' ? anyBasis : null };
}

export function typeOfQuantity(record: Pick<QuantityRecord, 'unit' | 'kind' | 'perBasis'>, basis: string): ValueType {
  if (record.kind === 'number') return plainNumber;
  const unit = parseUnit(record.unit);
  if (!unit.ok) throw new Error(`no such unit: ${record.unit}`);
  const kind = record.kind === 'fraction' || record.kind === 'temperature' ? record.kind : 'quantity';
  return { kind, dimension: unit.value.dimension, basis: record.perBasis ? basis : null };
}

export function isDifference(type: ValueType): boolean {
  return type.kind === 'quantity' && sameDimension(type.dimension, dimensions.temperature);
}

/**
 * The type of a product or quotient. What keeps a basis and has no dimension left is a fraction of that basis:
 * `First.loss * M(CaCO3) / M(CO2)`, also `Melting.enthalpy / 140 J/g`.
 */
export function productType(dimension: Dimension, basis: string | null): ValueType {
  if (!isDimensionless(dimension)) return { kind: 'quantity', dimension, basis };
  return basis === null ? plainNumber : { kind: 'fraction', dimension, basis };
}

/** A product keeps its only basis; two different ones leave a share of no basis in particular. */
export function productBasis(a: string | null, b: string | null): string | null {
  if (a === null || a === b) return b;
  if (b === null || b === anyBasis) return a;
  return a === anyBasis ? b : anyBasis;
}

/** What is divided by a share of a basis is no longer taken over it, and a share of a share is a plain number. */
export function quotientBasis(above: string | null, below: string | null): string | null {
  return below === null ? above : null;
}

/** In words, with an article: `a fraction (initial mass)`, `a temperature`, `a mass`. */
export function typeWords(type: ValueType): string {
  switch (type.kind) {
    case 'number':
      return 'a plain number';
    case 'fraction':
      return type.basis === null || type.basis === anyBasis ? 'a fraction' : `a fraction (${type.basis})`;
    case 'temperature':
      return 'a temperature';
    case 'quantity': {
      if (isDifference(type)) return 'a temperature difference';
      const name = dimensionName(type.dimension);
      return /^[a-z]/.test(name) ? `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}` : `a value in ${name}`;
    }
  }
}

/** The unit to propose for a value of this type. */
export function usualUnit(type: ValueType): string {
  return shownUnit(type.dimension, type.kind).text;
}

/** Whether a value of this type can be shown in a unit; `point`: a difference in °C. */
export function canShow(type: ValueType, unit: Unit): 'yes' | 'no' | 'point' {
  if (!sameDimension(type.dimension, unit.dimension)) return 'no';
  if (type.kind !== 'temperature' && isTemperaturePoint(unit)) return 'point';
  return 'yes';
}
