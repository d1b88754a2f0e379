import type { NameMeaning } from './scope';
import { peakQuantityOf, quantities, quantityRecord } from '../vocabulary/quantities';
import { typeOfQuantity, type ValueType } from './valueType';

type Evaluation = Extract<NameMeaning, { means: 'evaluation' }>;

/** Quantities of a peak that exist only for a heat flow, or in other units for other signals. */
const ofHeatFlow = new Set(['enthalpy', 'area', 'height']);

/** The type of one quantity of a statement; null where it has none of this name. */
export function quantityType(of: Evaluation, quantity: string): ValueType | null {
  const record = quantityRecord(of.kind, quantity);
  if (record === null || (of.inHold && record.kind === 'temperature')) return null;
  if (of.kind === 'peak' && of.signal !== null && of.signal !== 'heatflow' && ofHeatFlow.has(quantity)) {
    const other = peakQuantityOf(of.signal, quantity);
    return other === null ? null : typeOfQuantity(other, of.basis);
  }
  return typeOfQuantity(record, of.basis);
}

/** Names of the quantities a statement has. */
export function quantityNames(of: Evaluation): readonly string[] {
  return quantities[of.kind].map((record) => record.name).filter((name) => quantityType(of, name) !== null);
}
