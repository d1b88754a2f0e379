import { checkedCurve, type Curve } from '../analysis/curve';

/** A stretch of a signal made fit for analysis, and what was left out of it. */
export interface CleanCurve {
  /** Null: fewer than two points are left. */
  readonly curve: Curve | null;
  /** Row in the file of each point; null: all rows of the stretch. */
  readonly rows: Int32Array | null;
  /** Rows without a number in the time or the signal. */
  readonly gaps: number;
  /** Rows whose time does not increase. */
  readonly backward: number;
}

/**
 * Rows `first` to `last` (exclusive) of a signal as a checked curve over time (s): rows without a number and rows whose
 * time does not go on are left out and counted. Nothing is copied where nothing is left out.
 */
export function cleanCurve(time: Float64Array, values: Float64Array, first: number, last: number): CleanCurve {
  let gaps = 0;
  let backward = 0;
  let latest = -Infinity;
  const isKept = (i: number): boolean => Number.isFinite(values[i]) && Number.isFinite(time[i]);
  for (let i = first; i < last; i++) {
    if (!isKept(i)) gaps++;
    else if (time[i] > latest) latest = time[i];
    else backward++;
  }
  if (gaps === 0 && backward === 0) {
    return {
      curve: checkedCurve(time.subarray(first, last), values.subarray(first, last)),
      rows: null,
      gaps,
      backward,
    };
  }
  const rows = new Int32Array(Math.max(0, last - first - gaps - backward));
  latest = -Infinity;
  for (let i = first, k = 0; i < last; i++) {
    if (!isKept(i) || !(time[i] > latest)) continue;
    latest = time[i];
    rows[k++] = i;
  }
  const x = Float64Array.from(rows, (i) => time[i]);
  const y = Float64Array.from(rows, (i) => values[i]);
  return { curve: checkedCurve(x, y), rows, gaps, backward };
}
