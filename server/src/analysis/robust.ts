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

/** Variance of a standard normal cut off at `CUT` standard deviations on both sides. */
const CUT = 2.5;
const CUT_VARIANCE = 0.911256;

/**
 * Variance about zero of the normal part of numbers some of which are far too large: starts from the median and drops
 * what exceeds 2.5 standard deviations until nothing changes. More efficient than the median where all is well, and less
 * drawn up by it where a third of the numbers hold a signal. `kept` counts what was used.
 */
export function clippedVariance(residuals: Float64Array): { readonly variance: number; readonly kept: number } {
  const sizes = residuals.map(Math.abs).sort();
  if (sizes.length === 0) return { variance: 0, kept: 0 };
  let sigma = SIGMA_OF_MAD * sizes[(sizes.length - 1) >> 1];
  let kept = sizes.length;
  for (let round = 0; round < 20; round++) {
    let sum = 0;
    let n = 0;
    for (; n < sizes.length && sizes[n] <= CUT * sigma; n++) sum += sizes[n] ** 2;
    if (n === 0) return { variance: 0, kept: sizes.length };
    const next = Math.sqrt(sum / n / CUT_VARIANCE);
    const same = n === kept && Math.abs(next - sigma) <= 1e-12 * sigma;
    kept = n;
    sigma = next;
    if (same) break;
  }
  return { variance: sigma * sigma, kept };
}
