/** A stretch of time that shows something, and how much. */
export interface Stretch {
  /** s. */
  readonly from: number;
  readonly to: number;
  readonly size: number;
}

/** The median; NaN for none. */
export function middle(values: readonly number[]): number {
  if (values.length === 0) return NaN;
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
