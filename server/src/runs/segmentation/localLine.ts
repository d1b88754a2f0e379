import { lineThrough } from './lineThrough';

/**
 * Value at each sample of the straight line of least squares through the samples within `half` of it (one-sided at the
 * ends). O(n) by running sums, of what one line through all leaves over, about an origin that moves along: exact on
 * straight lines. Fewer than four samples in reach: the sample itself.
 */
export function localLine(x: Float64Array, y: Float64Array, half: number): Float64Array {
  const n = x.length;
  const fitted = new Float64Array(n);
  if (n === 0) return fitted;
  const whole = lineThrough(x, y, 0, n - 1);
  const level = whole.at(x[0]);
  const slope = n < 2 || x[n - 1] === x[0] ? 0 : (whole.at(x[n - 1]) - level) / (x[n - 1] - x[0]);
  const start = x[0];
  let from = 0;
  let to = 0;
  let origin = x[0];
  // Plain variables, not an object: this runs over every reading of a run.
  let count = 0;
  let sx = 0;
  let sxx = 0;
  let sy = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    const low = x[i] - half;
    const high = x[i] + half;
    if (x[i] - origin > 8 * half) {
      origin = x[i];
      count = sx = sxx = sy = sxy = 0;
      for (let j = from; j < to; j++) {
        const dx = x[j] - origin;
        const rest = y[j] - (slope * (x[j] - start) + level);
        count++;
        sx += dx;
        sxx += dx * dx;
        sy += rest;
        sxy += dx * rest;
      }
    }
    for (; to < n && x[to] <= high; to++) {
      const dx = x[to] - origin;
      const rest = y[to] - (slope * (x[to] - start) + level);
      count++;
      sx += dx;
      sxx += dx * dx;
      sy += rest;
      sxy += dx * rest;
    }
    for (; x[from] < low; from++) {
      const dx = x[from] - origin;
      const rest = y[from] - (slope * (x[from] - start) + level);
      count--;
      sx -= dx;
      sxx -= dx * dx;
      sy -= rest;
      sxy -= dx * rest;
    }
    const meanX = sx / count;
    const meanY = sy / count;
    const xx = sxx - sx * meanX;
    const xy = sxy - sx * meanY;
    const local = meanY + (xx > 0 ? (xy / xx) * (x[i] - origin - meanX) : 0);
    fitted[i] = count < 4 ? y[i] : local + slope * (x[i] - start) + level;
  }
  return fitted;
}
