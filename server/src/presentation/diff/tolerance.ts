/**
 * From when on a result counts as moved: by more than the larger of a floor and a fraction of the combined standard
 * uncertainty of both values. One rule for differences and for approvals.
 */
export interface Tolerance {
  /** Of the combined standard uncertainty. */
  readonly fraction: number;
  /** Of the larger value: hides the last bits of another machine. */
  readonly relativeFloor: number;
  /** Absolute floors in the shown unit, by result id (`First.loss`) or quantity (`loss`). */
  readonly floors: ReadonlyMap<string, number>;
}

export const defaultTolerance: Tolerance = { fraction: 0.05, relativeFloor: 1e-9, floors: new Map() };

/** Combined standard uncertainty of two values; null where either is unknown. */
export function combined(u1: number | null, u2: number | null): number | null {
  return u1 === null || u2 === null ? null : Math.hypot(u1, u2);
}

/** The largest difference that is no move. `u`: combined standard uncertainty, null unknown. All in one unit. */
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
