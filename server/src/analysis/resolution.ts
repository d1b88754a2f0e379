import { extentOf, partOf } from './extent';
import type { SampleRange } from './range';

/** Rounding of the readings: the step, 0 where none shows, and how long a reading typically stays the same (s). */
export interface Resolution {
  readonly step: number;
  readonly dwell: number;
}

/** Differences that are whole multiples of the smallest one: so many of them, to within so much, mean rounding. */
const SHARE = 0.98;
const WHOLE = 0.01;

/** Finds the step to which readings were rounded, from the differences of neighbours. */
export function resolutionOf(x: Float64Array, y: Float64Array, { first, last }: SampleRange): Resolution {
  const { least: lowest, most: highest } = extentOf(partOf(y, first, last));
  const least = 1e-12 * Math.max(0, highest, -lowest);
  let step = Infinity;
  for (let i = first + 1; i < last; i++) {
    const size = Math.abs(y[i] - y[i - 1]);
    if (size > least && size < step) step = size;
  }
  if (!Number.isFinite(step)) return { step: 0, dwell: 0 };
  let changes = 0;
  let broken = 0;
  // More broken differences than this, and no number of further changes makes up for it.
  const most = (1 - SHARE) * (last - first) + 1;
  let squares = 0;
  let since = first;
  for (let i = first + 1; i < last; i++) {
    const size = Math.abs(y[i] - y[i - 1]);
    if (size <= least) continue;
    changes++;
    const multiple = size / step;
    if (!(Math.abs(multiple - Math.round(multiple)) <= WHOLE) && ++broken > most) return { step: 0, dwell: 0 };
    squares += (x[i] - x[since]) * (x[i] - x[since]);
    since = i;
  }
  squares += (x[last - 1] - x[since]) ** 2;
  if (changes < 8 || changes - broken < SHARE * changes) return { step: 0, dwell: 0 };
  return { step, dwell: squares / (x[last - 1] - x[first]) };
}
