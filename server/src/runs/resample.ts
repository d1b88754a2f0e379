/** Where a file has nothing at a time that was asked for. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface Resampled {
  /** One array a signal, one value a time asked for; NaN where there is none. */
  readonly values: readonly Float64Array[];
  /** Stretches of the times asked for without a value, in order. */
  readonly missing: readonly Stretch[];
}

/**
 * Signals at other times: linear between neighbouring samples, NaN before the first, after the last and inside gaps longer
 * than `longestGap`. `x` strictly increases. `at` may hold anything; times that do not go on get NaN without being counted
 * as missing. O(n + m).
 */
export function resample(
  x: Float64Array,
  signals: readonly Float64Array[],
  at: Float64Array,
  longestGap: number,
): Resampled {
  const values = signals.map(() => new Float64Array(at.length).fill(NaN));
  const missing: { from: number; to: number }[] = [];
  let open: { from: number; to: number } | null = null;
  let latest = -Infinity;
  let k = 0;
  for (let i = 0; i < at.length; i++) {
    const t = at[i];
    if (!(t > latest)) continue;
    latest = t;
    while (k + 1 < x.length && x[k + 1] <= t) k++;
    const isExact = x[k] === t;
    const isBetween = t > x[k] && k + 1 < x.length && x[k + 1] - x[k] <= longestGap;
    if (!isExact && !isBetween) {
      if (open === null) missing.push((open = { from: t, to: t }));
      else open.to = t;
      continue;
    }
    open = null;
    const part = isExact ? 0 : (t - x[k]) / (x[k + 1] - x[k]);
    for (let s = 0; s < signals.length; s++) {
      const y = signals[s];
      values[s][i] = part === 0 ? y[k] : y[k] + part * (y[k + 1] - y[k]);
    }
  }
  return { values, missing };
}

/** Median interval of increasing times; NaN for fewer than two. */
export function medianInterval(x: Float64Array): number {
  if (x.length < 2) return NaN;
  const step = Math.max(1, Math.floor(x.length / 5000));
  const intervals: number[] = [];
  for (let i = 1; i < x.length; i += step) intervals.push(x[i] - x[i - 1]);
  intervals.sort((a, b) => a - b);
  return intervals[intervals.length >> 1];
}
