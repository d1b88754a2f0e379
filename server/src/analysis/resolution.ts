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

/** So many readings from the middle tell how a file was rounded, unless they change too rarely. */
const ENOUGH = 20_000;
const CHANGES = 1000;

/** Finds the step to which readings were rounded, from the differences of neighbours. */
export function resolutionOf(x: Float64Array, y: Float64Array, range: SampleRange): Resolution {
  const { least: lowest, most: highest } = extentOf(partOf(y, range.first, range.last));
  const least = 1e-12 * Math.max(0, highest, -lowest);
  const count = range.last - range.first;
  if (count > 2 * ENOUGH) {
    const first = range.first + ((count - ENOUGH) >> 1);
    const part = roundingIn(x, y, { first, last: first + ENOUGH }, least);
    if (part.changes >= CHANGES) return part;
  }
  return roundingIn(x, y, range, least);
}

function roundingIn(
  x: Float64Array,
  y: Float64Array,
  { first, last }: SampleRange,
  least: number,
): Resolution & { readonly changes: number } {
  const smooth = (changes: number) => ({ step: 0, dwell: 0, changes });
  let step = Infinity;
  for (let i = first + 1; i < last; i++) {
    const size = Math.abs(y[i] - y[i - 1]);
    if (size > least && size < step) step = size;
  }
  if (!Number.isFinite(step)) return smooth(0);
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
    if (!(Math.abs(multiple - Math.round(multiple)) <= WHOLE) && ++broken > most) return smooth(changes);
    squares += (x[i] - x[since]) * (x[i] - x[since]);
    since = i;
  }
  squares += (x[last - 1] - x[since]) ** 2;
  if (changes < 8 || changes - broken < SHARE * changes) return smooth(changes);
  return { step, dwell: squares / (x[last - 1] - x[first]), changes };
}
