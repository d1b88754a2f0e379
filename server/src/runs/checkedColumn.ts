import { checkedCurve, type Curve, type Window } from '../analysis/curve';
import { extentOf, partOf } from '../analysis/extent';
import { samplesIn } from '../analysis/range';

/**
 * The readings of one signal as a checked curve: rows without a number or a later time than the row before are left out,
 * and so are masked ones. `within` (s) keeps one segment; null keeps all. Null with fewer than two readings.
 */
export function checkedColumn(
  time: Float64Array,
  values: Float64Array,
  within: Window | null,
  masked: readonly Window[],
): Curve | null {
  const clock = extentOf(time);
  if (masked.length === 0 && clock.finite && clock.leastStep > 0 && extentOf(values).finite) {
    // Nothing to leave out: a part of the columns as they are.
    const { first, last } = within === null ? { first: 0, last: time.length } : samplesIn(time, within);
    return checkedCurve(partOf(time, first, last), partOf(values, first, last));
  }
  const x = new Float64Array(time.length);
  const y = new Float64Array(time.length);
  let length = 0;
  let latest = -Infinity;
  for (let i = 0; i < time.length; i++) {
    const t = time[i];
    const v = values[i];
    if (!(t > latest) || !Number.isFinite(v) || !Number.isFinite(t)) continue;
    if (within !== null && (t < within.from || t > within.to)) continue;
    if (masked.length > 0 && masked.some((m) => t >= m.from && t <= m.to)) continue;
    latest = t;
    x[length] = t;
    y[length] = v;
    length++;
  }
  return checkedCurve(x.slice(0, length), y.slice(0, length));
}
