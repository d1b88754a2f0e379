export interface SampleStatistics {
  readonly n: number;
  readonly mean: number | null;
  /** Sample standard deviation (n - 1); null below two values. */
  readonly s: number | null;
}

/** n, mean and standard deviation of replicate values (JCGM 100:2008, 4.2.1 and 4.2.2), summed about the first value. */
export function sampleStatistics(values: readonly number[]): SampleStatistics {
  const n = values.length;
  if (n === 0) return { n, mean: null, s: null };
  const centre = values[0];
  const mean = centre + values.reduce((sum, x) => sum + (x - centre), 0) / n;
  if (n === 1) return { n, mean, s: null };
  return { n, mean, s: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1)) };
}
