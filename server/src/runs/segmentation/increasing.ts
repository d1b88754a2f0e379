import { extentOf } from '../../analysis/extent';

/**
 * Nodes whose `y` strictly increases along `x` (decreases for `sign` -1): neighbours that do not are pooled into their
 * means, until none is left.
 */
export function increasing(x: Float64Array, y: Float64Array, sign: number): { x: Float64Array; y: Float64Array } {
  const steps = extentOf(y);
  if (steps.finite && (sign > 0 ? steps.leastStep > 0 : steps.mostStep < 0)) return { x, y };
  const n = x.length;
  const meanX = new Float64Array(n);
  const meanY = new Float64Array(n);
  const weight = new Float64Array(n);
  let count = 0;
  for (let i = 0; i < n; i++) {
    meanX[count] = x[i];
    meanY[count] = y[i];
    weight[count] = 1;
    count++;
    while (count > 1 && !(sign * (meanY[count - 1] - meanY[count - 2]) > 0)) {
      const a = weight[count - 2];
      const b = weight[count - 1];
      meanX[count - 2] += ((meanX[count - 1] - meanX[count - 2]) * b) / (a + b);
      meanY[count - 2] += ((meanY[count - 1] - meanY[count - 2]) * b) / (a + b);
      weight[count - 2] = a + b;
      count--;
    }
  }
  return { x: meanX.slice(0, count), y: meanY.slice(0, count) };
}
