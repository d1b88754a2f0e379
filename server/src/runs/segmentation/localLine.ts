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
  const rest = Float64Array.from(y, (value, i) => value - whole.at(x[i]));
  let from = 0;
  let to = 0;
  let origin = x[0];
  let sum = { count: 0, x: 0, xx: 0, y: 0, xy: 0 };
  const add = (i: number, sign: 1 | -1): void => {
    const dx = x[i] - origin;
    sum.count += sign;
    sum.x += sign * dx;
    sum.xx += sign * dx * dx;
    sum.y += sign * rest[i];
    sum.xy += sign * dx * rest[i];
  };
  for (let i = 0; i < n; i++) {
    if (x[i] - origin > 8 * half) {
      origin = x[i];
      sum = { count: 0, x: 0, xx: 0, y: 0, xy: 0 };
      for (let j = from; j < to; j++) add(j, 1);
    }
    while (to < n && x[to] <= x[i] + half) add(to++, 1);
    while (x[from] < x[i] - half) add(from++, -1);
    const { count } = sum;
    const meanX = sum.x / count;
    const meanY = sum.y / count;
    const xx = sum.xx - sum.x * meanX;
    const xy = sum.xy - sum.x * meanY;
    const local = meanY + (xx > 0 ? (xy / xx) * (x[i] - origin - meanX) : 0);
    fitted[i] = count < 4 ? y[i] : local + whole.at(x[i]);
  }
  return fitted;
}
