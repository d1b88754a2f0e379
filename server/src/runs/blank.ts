import { cleanCurve } from './cleanCurve';
import { programmeOffset, type ProgrammeRun } from './programmeOffset';
import { medianInterval, resample, type Stretch } from './resample';

/** A blank on the times of a run. */
export interface MatchedBlank {
  /** One value a row of the run, in the blank's unit; NaN where the blank has none. */
  readonly values: Float64Array;
  /** Stretches of the run's time (s) without a blank. */
  readonly missing: readonly Stretch[];
  /** Seconds that were added to the blank's times. */
  readonly offset: number;
  /** Largest difference of the two temperatures at equal times (K), and the run's time there; null: nothing in common. */
  readonly temperature: { readonly difference: number; readonly at: number } | null;
}

/**
 * Brings a blank onto the rows of a run by time, counted from the start of each programme, and compares temperatures.
 * `signal` is the blank's signal; with `asChange` (mass) its change from its first ten seconds counts, since only the
 * change is the blank's own. Sampling may differ; gaps over 10 s (or five of its intervals) are missing, not bridged.
 * Null: the programmes have nothing in common, or the blank has no numbers.
 */
export function matchBlank(
  run: ProgrammeRun,
  blank: ProgrammeRun,
  signal: Float64Array,
  asChange: boolean,
): MatchedBlank | null {
  const offset = programmeOffset(run, blank);
  if (offset === null) return null;
  const { curve, rows } = cleanCurve(blank.time, signal, 0, blank.time.length);
  if (curve === null) return null;
  const temperature = rows === null ? blank.temperature : Float64Array.from(rows, (i) => blank.temperature[i]);
  const times = offset === 0 ? curve.x : curve.x.map((t) => t + offset);
  const start = asChange ? meanOfStart(curve.x, curve.y) : 0;
  const changes = start === 0 ? curve.y : curve.y.map((value) => value - start);
  const longestGap = Math.max(10, 5 * medianInterval(times));
  const { values, missing } = resample(times, [changes, temperature], run.time, longestGap);
  return { values: values[0], missing, offset, temperature: largestDifference(run, values[1]) };
}

function meanOfStart(x: Float64Array, y: Float64Array): number {
  let sum = 0;
  let count = 0;
  while (count < x.length && x[count] - x[0] <= 10) sum += y[count++] - y[0];
  return y[0] + sum / count;
}

function largestDifference(run: ProgrammeRun, other: Float64Array): MatchedBlank['temperature'] {
  let difference = -1;
  let at = NaN;
  for (let i = 0; i < other.length; i++) {
    const here = Math.abs(run.temperature[i] - other[i]);
    if (here > difference) {
      difference = here;
      at = run.time[i];
    }
  }
  return difference < 0 ? null : { difference, at };
}

/** Several blanks as one. */
export interface MeanBlank {
  readonly values: Float64Array;
  /**
   * Standard deviation of one blank about the mean, pooled over all rows where every blank has a value; null for a single
   * one. The mean has this over √count.
   */
  readonly repeatability: number | null;
  readonly count: number;
  readonly degreesOfFreedom: number;
}

/** The row-wise mean of blanks on the same rows; NaN where any of them has no value. */
export function meanBlank(blanks: readonly Float64Array[]): MeanBlank {
  const count = blanks.length;
  const values = new Float64Array(count === 0 ? 0 : blanks[0].length);
  let squares = 0;
  let rows = 0;
  for (let i = 0; i < values.length; i++) {
    let sum = 0;
    for (const blank of blanks) sum += blank[i] - blanks[0][i];
    const mean = blanks[0][i] + sum / count;
    values[i] = mean;
    if (count < 2 || Number.isNaN(mean)) continue;
    let square = 0;
    for (const blank of blanks) square += (blank[i] - mean) ** 2;
    squares += square / (count - 1);
    rows++;
  }
  const repeatability = rows > 0 ? Math.sqrt(squares / rows) : null;
  return { values, repeatability, count, degreesOfFreedom: Math.max(0, count - 1) };
}
