/**
 * From when on a result counts as moved: by more than the larger of a floor and a fraction of a standard uncertainty. One
 * rule for differences and for approvals; they differ in whose uncertainty counts.
 */
export interface Tolerance {
  /** Of the standard uncertainty. */
  readonly fraction: number;
  /**
   * `combined`: of both values, for two sides of equal rank. `old`: of the older value alone, for what was approved: a
   * result that comes out less certain now allows itself nothing by that.
   */
  readonly of: 'combined' | 'old';
  /** Of the larger value: hides the last bits of another machine. */
  readonly relativeFloor: number;
  /** Absolute floors in the shown unit, by result id (`First.loss`) or quantity (`loss`). */
  readonly floors: ReadonlyMap<string, number>;
}

export const defaultTolerance: Tolerance = { fraction: 0.05, of: 'combined', relativeFloor: 1e-9, floors: new Map() };

/** max(0.05 u, 1e-9 of the value) with the u stored in the record of an approval (language.md, section 4); u and limit count too. */
export const approvalTolerance: Tolerance = { ...defaultTolerance, of: 'old' };

/** Combined standard uncertainty of two values; null where either is unknown. */
export function combined(u1: number | null, u2: number | null): number | null {
  return u1 === null || u2 === null ? null : Math.hypot(u1, u2);
}

/** The standard uncertainty that a tolerance is a fraction of; null unknown. Both in one unit. */
export function countedUncertainty(tolerance: Tolerance, oldU: number | null, newU: number | null): number | null {
  return tolerance.of === 'old' ? oldU : combined(oldU, newU);
}

/** The largest difference that is no move. `u`: as `countedUncertainty` gives it. All in one unit. */
export function allowedDifference(
  tolerance: Tolerance,
  result: { readonly id: string; readonly quantity: string },
  oldValue: number,
  newValue: number,
  u: number | null,
): number {
  const floor = tolerance.floors.get(result.id) ?? tolerance.floors.get(result.quantity) ?? 0;
  const last = tolerance.relativeFloor * Math.max(Math.abs(oldValue), Math.abs(newValue));
  return Math.max(floor, last, u === null ? 0 : tolerance.fraction * u);
}
