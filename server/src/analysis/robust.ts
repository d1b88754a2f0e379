/** Ratio of the standard deviation of normal numbers to their median absolute deviation. */
export const SIGMA_OF_MAD = 1.4826;

/** The value at a fraction of the way through the sorted values; sorts a copy. 0 for none. */
export function quantile(values: Float64Array, fraction: number): number {
  if (values.length === 0) return 0;
  const sorted = Float64Array.from(values).sort();
  const at = fraction * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

/** Scatter about zero of mostly normal numbers, by their median absolute value. */
export function scatterOf(residuals: Float64Array): number {
  return SIGMA_OF_MAD * quantile(residuals.map(Math.abs), 0.5);
}

/** Numbers beyond so many standard deviations are left out; what is left of a normal variance then. */
const CUT = 2.5;
const CUT_VARIANCE = 0.911256;
/** Where the search starts: a fifth of the numbers are below a quarter of a standard deviation. */
const START = 0.2;
const START_DEVIATIONS = 0.253347;

/**
 * Variance about zero of the normal part of numbers of which many, even most, may hold a signal besides: from the
 * smallest numbers upward, takes in what lies within 2.5 standard deviations of those taken in, until nothing changes.
 * Started from below because signals of all sizes (an exponential tail) have no scale of their own: from above the
 * search would rest on them. `kept` counts what was used.
 */
export function clippedVariance(numbers: Float64Array): { readonly variance: number; readonly kept: number } {
  const sizes = new Float64Array(numbers.length);
  for (let i = 0; i < sizes.length; i++) sizes[i] = Math.abs(numbers[i]);
  sizes.sort();
  if (sizes.length === 0) return { variance: 0, kept: 0 };
  let sigma = sizes[Math.floor(START * (sizes.length - 1))] / START_DEVIATIONS;
  let n = 0;
  let sum = 0;
  for (let round = 0; round < 50; round++) {
    const before = n;
    const most = CUT * sigma;
    if (n > 0 && sizes[n - 1] > most) n = sum = 0;
    for (; n < sizes.length && sizes[n] <= most; n++) sum += sizes[n] * sizes[n];
    if (n === 0) return { variance: 0, kept: sizes.length };
    sigma = Math.sqrt(sum / n / CUT_VARIANCE);
    if (n === before) break;
  }
  return { variance: sigma * sigma, kept: n };
}
