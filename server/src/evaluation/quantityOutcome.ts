import type { Uncertain } from '../quantities/uncertain';
import type { Kind, Unit } from '../quantities/unit';
import type { QuantityOutcome } from './outcome';

/** A quantity with a value and nothing special about it. */
export function plainQuantity(
  quantity: string,
  uncertain: Uncertain | null,
  unit: Unit,
  kind: Kind,
  basis: string | null = null,
  reason: string | null = null,
): QuantityOutcome {
  return { quantity, uncertain, unit, kind, basis, limit: null, reason };
}
