/** A stretch without readings longer than this many usual intervals is a gap: nothing is interpolated across it. */
const gapIntervals = 5;

/**
 * Values of a signal at other times, by straight lines between its readings. NaN before its first and after its last
 * reading and inside gaps. Readings without a number, and those whose time does not increase, are passed over.
 *
 * @param time s, of the readings; need not be sorted strictly
 * @param values any unit, NaN where there is none
 * @param wanted s, in any order
 */
export function atTimes(time: Float64Array, values: Float64Array, wanted: Float64Array): Float64Array {
  const { x, y, length } = increasing(time, values);
  const result = new Float64Array(wanted.length).fill(NaN);
  if (length === 0) return result;
  const usual = length > 1 ? medianInterval(x, length) : 0;
  let at = 0;
  for (let i = 0; i < wanted.length; i++) {
    const t = wanted[i];
    if (!(t >= x[0] && t <= x[length - 1])) continue;
    if (x[at] > t || (at + 1 < length && x[at + 1] < t)) at = before(x, length, t);
    const next = Math.min(at + 1, length - 1);
    const step = x[next] - x[at];
    if (step === 0) result[i] = y[at];
    else if (t === x[at]) result[i] = y[at];
    else if (t === x[next]) result[i] = y[next];
    else if (step <= gapIntervals * usual) result[i] = y[at] + ((y[next] - y[at]) * (t - x[at])) / step;
  }
  return result;
}

function increasing(time: Float64Array, values: Float64Array): { x: Float64Array; y: Float64Array; length: number } {
  const x = new Float64Array(time.length);
  const y = new Float64Array(time.length);
  let length = 0;
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(time[i]) || !Number.isFinite(values[i])) continue;
    if (length > 0 && !(time[i] > x[length - 1])) continue;
    x[length] = time[i];
    y[length] = values[i];
    length++;
  }
  return { x, y, length };
}

function medianInterval(x: Float64Array, length: number): number {
  const steps = new Float64Array(length - 1);
  for (let i = 0; i + 1 < length; i++) steps[i] = x[i + 1] - x[i];
  steps.sort();
  return steps[steps.length >> 1];
}

/** Index of the last reading at or before `t`. */
function before(x: Float64Array, length: number, t: number): number {
  let low = 0;
  let high = length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (x[middle] <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}
