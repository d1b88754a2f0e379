/** How the times of a run are spaced. */
export interface SamplingMetrics {
  /** Median interval (s) between rows whose time goes on. */
  readonly median: number;
  /** The largest interval that is more than three times the medians of the intervals around it, and its start (s). */
  readonly gap: { readonly length: number; readonly at: number; readonly row: number } | null;
  readonly gaps: number;
  /** Rows whose time does not increase, and the first of them. */
  readonly notIncreasing: number;
  readonly firstNotIncreasing: number | null;
}

const around = 10;

/**
 * Rule A05: the interval between rows. Files may be thinned on purpose (denser where more happens), so a gap is measured
 * against the twenty intervals around it, not against the whole run; and a file with one row per equal step of temperature
 * has no gap where the temperature rises slowly.
 */
export function samplingMetrics(time: Float64Array, temperature: Float64Array | null): SamplingMetrics {
  const intervals: number[] = [];
  const rows: number[] = [];
  let latest = NaN;
  let notIncreasing = 0;
  let firstNotIncreasing: number | null = null;
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(time[i])) continue;
    if (Number.isNaN(latest) || time[i] > latest) {
      if (!Number.isNaN(latest)) {
        intervals.push(time[i] - latest);
        rows.push(i);
      }
      latest = time[i];
    } else {
      notIncreasing++;
      firstNotIncreasing ??= i;
    }
  }
  const median = medianOf(intervals);
  let gap: SamplingMetrics['gap'] = null;
  let gaps = 0;
  for (let k = 0; k < intervals.length; k++) {
    // Most intervals are no longer than the median by much: only the others need their neighbours.
    if (!(intervals[k] > 1.5 * median)) continue;
    const near = intervals.slice(Math.max(0, k - around), k + around + 1);
    if (near.length < 5 || !(intervals[k] > 3 * medianOf(near))) continue;
    if (temperature !== null && isTemperatureStep(temperature, rows, k)) continue;
    gaps++;
    const row = rows[k];
    if (gap === null || intervals[k] > gap.length) gap = { length: intervals[k], at: time[row] - intervals[k], row };
  }
  return { median, gap, gaps, notIncreasing, firstNotIncreasing };
}

/** Whether the rows around stand at equal steps of temperature, and this interval is one such step. */
function isTemperatureStep(temperature: Float64Array, rows: readonly number[], k: number): boolean {
  const stepAt = (j: number): number => Math.abs(temperature[rows[j]] - temperature[rows[j] - 1]);
  const steps: number[] = [];
  for (let j = Math.max(0, k - around); j <= Math.min(rows.length - 1, k + around); j++)
    if (j !== k) steps.push(stepAt(j));
  const usual = medianOf(steps);
  const alike = steps.filter((step) => Math.abs(step - usual) < 0.2 * usual).length;
  return alike > 0.8 * steps.length && Math.abs(stepAt(k) - usual) < 0.5 * usual;
}

function medianOf(values: readonly number[]): number {
  if (values.length === 0) return NaN;
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1];
}
