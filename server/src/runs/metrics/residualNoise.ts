import { lineThrough } from '../segmentation/lineThrough';

/** The quick noise of a signal, about straight lines over short blocks. */
export interface ResidualNoise {
  /** 1.4826 times the median absolute residual. */
  readonly sigma: number;
  /** Median over the blocks of the correlation of neighbouring residuals; null: no noise to judge it by. */
  readonly neighbours: number | null;
}

const blockSeconds = 60;
const leastInBlock = 8;
const mostInBlock = 40;
const mostBlocks = 400;

/**
 * Rule A11: how much neighbouring residuals resemble each other; above 0.8 the record was smoothed before it was
 * exported. Blocks of 60 s, of 8 to 40 samples (longer ones would show drift, not smoothing); the half of them with the smaller residuals counts, where no effect
 * bends the curve. Rounded records (residuals of the size of the last digit) and exact curves give null.
 */
export function residualNoise(time: Float64Array, values: Float64Array): ResidualNoise {
  const blocks: { spread: number; neighbours: number }[] = [];
  const sizes: number[] = [];
  const n = values.length;
  const stretches = blockStarts(time, n);
  const every = Math.max(1, Math.ceil(stretches.length / mostBlocks));
  let scale = 0;
  for (let k = 0; k < stretches.length; k += every) {
    const [from, to] = stretches[k];
    const line = lineThrough(time, values, from, to - 1);
    const residuals = Float64Array.from({ length: to - from }, (_, j) => values[from + j] - line.at(time[from + j]));
    if (!residuals.every(Number.isFinite)) continue;
    let square = 0;
    let product = 0;
    for (let j = 0; j < residuals.length; j++) {
      square += residuals[j] ** 2;
      if (j > 0) product += residuals[j] * residuals[j - 1];
      sizes.push(Math.abs(residuals[j]));
      scale = Math.max(scale, Math.abs(values[from + j]));
    }
    const spread = Math.sqrt(square / residuals.length);
    blocks.push({ spread, neighbours: square > 0 ? product / square : NaN });
  }
  sizes.sort((a, b) => a - b);
  const sigma = sizes.length === 0 ? NaN : 1.4826 * sizes[sizes.length >> 1];
  const quiet = blocks.sort((a, b) => a.spread - b.spread).slice(0, Math.ceil(blocks.length / 2));
  const judged = quiet.filter(({ spread, neighbours }) => spread > 1e-7 * scale && Number.isFinite(neighbours));
  const sorted = judged.map(({ neighbours }) => neighbours).sort((a, b) => a - b);
  const enough = sorted.length >= 5 && sorted.length >= quiet.length / 2 && sigma > 2 * lastDigit(values);
  return { sigma, neighbours: enough ? sorted[sorted.length >> 1] : null };
}

/** Blocks one after the other, without back-steps of time inside. */
function blockStarts(time: Float64Array, n: number): [number, number][] {
  const blocks: [number, number][] = [];
  let from = 0;
  for (let i = 1; i <= n; i++) {
    const broken = i < n && !(time[i] > time[i - 1]);
    const long = i < n && time[i] - time[from] > blockSeconds;
    const full = i - from >= mostInBlock || (long && i - from >= leastInBlock);
    if (i < n && !broken && !full) continue;
    if (i - from >= leastInBlock) blocks.push([from, i]);
    from = i;
  }
  return blocks;
}

/** The smallest step between neighbouring values that occurs often: the last digit that is written. */
function lastDigit(values: Float64Array): number {
  const steps: number[] = [];
  const every = Math.max(1, Math.floor(values.length / 4000));
  for (let i = 1; i < values.length; i += every) {
    const step = Math.abs(values[i] - values[i - 1]);
    if (step > 0) steps.push(step);
  }
  if (steps.length === 0) return 0;
  steps.sort((a, b) => a - b);
  const small = steps[Math.floor(steps.length / 50)];
  // A written step comes again and again; without rounding hardly two steps are equal.
  const same = steps.filter((step) => Math.abs(step - small) < 1e-6 * small).length;
  return same > steps.length / 20 ? small : 0;
}
