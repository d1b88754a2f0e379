import type { Window } from './curve';

/** Samples `first` (inclusive) to `last` (exclusive). */
export interface SampleRange {
  readonly first: number;
  readonly last: number;
}

/** Index of the first sample at or after `t`; the length where there is none. Binary search. */
export function firstAtOrAfter(x: Float64Array, t: number, low = 0, high = x.length): number {
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (x[middle] < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the first sample after `t`. */
export function firstAfter(x: Float64Array, t: number, low = 0, high = x.length): number {
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (x[middle] <= t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The samples inside a window, both ends included. */
export function samplesIn(x: Float64Array, window: Window): SampleRange {
  const first = firstAtOrAfter(x, window.from);
  return { first, last: firstAfter(x, window.to, first) };
}

/** The samples within `width` centred on `centre`, inside `within`; widened outward to hold at least `least` of them. */
export function samplesAround(
  x: Float64Array,
  centre: number,
  width: number,
  least: number,
  within: SampleRange = { first: 0, last: x.length },
): SampleRange {
  let first = firstAtOrAfter(x, centre - width / 2, within.first, within.last);
  let last = firstAfter(x, centre + width / 2, first, within.last);
  while (last - first < least && (first > within.first || last < within.last)) {
    // The nearer neighbour comes in first; at an end of the data only one side is left.
    const before = first > within.first ? centre - x[first - 1] : Infinity;
    const after = last < within.last ? x[last] - centre : Infinity;
    if (before <= after) first--;
    else last++;
  }
  return { first, last };
}
