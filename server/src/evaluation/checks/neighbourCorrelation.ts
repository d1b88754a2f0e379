import type { Curve } from '../../analysis/curve';
import type { Noise } from '../../analysis/noise';
import { middle } from './stretch';

/** Readings a block of residuals has, and blocks at least. */
const BLOCK = 120;
const FEWEST_BLOCKS = 8;
const MOST_BLOCKS = 120;
/** A block whose residuals scatter more than this many sigma holds signal, not noise. */
const QUIET = 1.5;

/**
 * Correlation of neighbouring residuals about parabolas through 120 readings each: the median over the blocks that hold
 * nothing but noise. The parabola takes a little of it: 0.86 (means over 7 readings) comes out as 0.83, 0.80 as 0.76.
 * Rounded readings tell nothing (their residuals follow the rounding), nor do exact curves; null then.
 */
export function neighbourCorrelation({ y }: Curve, noise: Noise): number | null {
  if (!(noise.sigma > 0) || (noise.resolution > 0 && noise.sigma < noise.resolution)) return null;
  const correlations: number[] = [];
  const stride = Math.max(BLOCK, Math.floor(y.length / MOST_BLOCKS));
  for (let first = 0; first + BLOCK <= y.length; first += stride) {
    const residuals = parabolaResiduals(y.subarray(first, first + BLOCK));
    let power = 0;
    let product = 0;
    for (let i = 0; i < BLOCK; i++) {
      power += residuals[i] * residuals[i];
      if (i > 0) product += residuals[i] * residuals[i - 1];
    }
    const scatter = Math.sqrt(power / BLOCK);
    if (scatter > 1e-7 * Math.abs(y[first]) && scatter < QUIET * noise.sigma) correlations.push(product / power);
  }
  return correlations.length < FEWEST_BLOCKS ? null : middle(correlations);
}

/** Residuals about the least-squares parabola, on evenly spaced readings. */
function parabolaResiduals(y: Float64Array): Float64Array {
  const n = y.length;
  const half = (n - 1) / 2;
  let mean = 0;
  for (let i = 0; i < n; i++) mean += (y[i] - y[0]) / n;
  let squares = 0;
  let fourths = 0;
  let slope = 0;
  for (let i = 0; i < n; i++) {
    const u = i - half;
    squares += u * u;
    slope += u * (y[i] - y[0]);
  }
  const spread = squares / n;
  let bend = 0;
  for (let i = 0; i < n; i++) {
    const q = (i - half) * (i - half) - spread;
    fourths += q * q;
    bend += q * (y[i] - y[0]);
  }
  const residuals = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const u = i - half;
    residuals[i] = y[i] - y[0] - mean - (slope / squares) * u - (bend / fourths) * (u * u - spread);
  }
  return residuals;
}
