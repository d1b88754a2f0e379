export interface Line {
  readonly slope: number;
  at(x: number): number;
}

/**
 * The straight line of least squares through samples `from` to `to` (inclusive), or every `every`-th of them; sums are
 * centred first.
 */
export function lineThrough(x: Float64Array, y: Float64Array, from: number, to: number, every = 1): Line {
  const count = Math.floor((to - from) / every) + 1;
  let meanX = 0;
  let meanY = 0;
  for (let i = from; i <= to; i += every) {
    meanX += x[i] - x[from];
    meanY += y[i] - y[from];
  }
  meanX = x[from] + meanX / count;
  meanY = y[from] + meanY / count;
  let xx = 0;
  let xy = 0;
  for (let i = from; i <= to; i += every) {
    xx += (x[i] - meanX) * (x[i] - meanX);
    xy += (x[i] - meanX) * (y[i] - meanY);
  }
  const slope = xx > 0 ? xy / xx : 0;
  return { slope, at: (at) => meanY + slope * (at - meanX) };
}
