/** A sudden offset between two samples. */
export interface Jump {
  readonly row: number;
  readonly at: number;
  /** Value after minus value before, less what the slope around explains. */
  readonly size: number;
}

const reach = 6;

/**
 * Rule A08: steps from sample to sample of more than ten standard deviations that the slope around them does not explain
 * (a knock, spitting, the specimen touching its carrier). The slope is the median of the twelve steps around. The largest
 * first; neighbours within the reach are one jump.
 */
export function findJumps(time: Float64Array, values: Float64Array, sigma: number, limit = 10): Jump[] {
  const found: Jump[] = [];
  if (!(sigma > 0)) return found;
  const steps = new Float64Array(2 * reach);
  for (let i = reach + 1; i + reach < values.length; i++) {
    const step = values[i] - values[i - 1];
    if (!(Math.abs(step) > limit * sigma)) continue;
    for (let j = 0, k = 0; k < 2 * reach; j++) {
      const at = i - reach + j;
      if (at !== i) steps[k++] = (values[at] - values[at - 1]) / (time[at] - time[at - 1]);
    }
    steps.sort();
    const slope = (steps[reach - 1] + steps[reach]) / 2;
    // Steep but smooth: on a peak's flank the steps beside are alike.
    const size = step - slope * (time[i] - time[i - 1]);
    const spread = (steps[2 * reach - 2] - steps[1]) * (time[i] - time[i - 1]);
    if (!(Math.abs(size) > limit * sigma && Math.abs(size) > 2 * Math.abs(spread))) continue;
    const latest = found[found.length - 1] as Jump | undefined;
    if (latest !== undefined && i - latest.row <= reach) {
      if (Math.abs(size) > Math.abs(latest.size)) found[found.length - 1] = { row: i, at: time[i], size };
    } else found.push({ row: i, at: time[i], size });
  }
  return found.sort((a, b) => Math.abs(b.size) - Math.abs(a.size));
}
