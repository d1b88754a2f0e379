import type { NoiseComponent } from './noise';

/** Robust variance of contrasts of neighbouring block means, one block length. */
export interface BlockVariance {
  /** Readings in a block. */
  readonly size: number;
  readonly variance: number;
  /** Independent contrasts it rests on. */
  readonly count: number;
}

/**
 * The fifth difference of six neighbouring block means, squares of the weights summing to one: blind to any polynomial
 * of fourth degree, so that a signal changing over the six blocks leaves next to nothing in it.
 */
export const CONTRAST = [1, -5, 10, -10, 5, -1].map((c) => c / Math.sqrt(252));

/** Sums of the products of its weights so many blocks apart, both ways. */
const LAGS = CONTRAST.map((_, apart) => {
  const products = CONTRAST.slice(apart).map((weight, i) => weight * CONTRAST[i]);
  return (apart === 0 ? 1 : 2) * products.reduce((a, b) => a + b, 0);
});

/** Correlation times of 1/f noise are spaced by octaves. */
const SPACING = 2;

/** Variance that must be explained before slow noise is believed: twice the gain in likelihood of chance. */
const BELIEF = 2;

/** A variance counts for at most so many numbers: the model is no better than that, and long blocks must be heard. */
const TRUST = 60;

/**
 * The plainest autocovariance that explains the contrasts: white noise, or white and 1/f noise, or these and one
 * correlation time (readings already averaged by the instrument). 1/f noise goes on to correlation times as long as the
 * segment: what the longest blocks cannot see is extrapolated, not left out.
 *
 * Fitted by the likelihood of variances (the deviance of gamma numbers), amplitudes never negative, by multiplicative
 * updates. `interval` and `duration` in s.
 */
export function fitNoise(
  blocks: readonly BlockVariance[],
  interval: number,
  duration: number,
): readonly NoiseComponent[] {
  const seen = blocks
    .filter((b) => b.variance > 0 && b.count > 0)
    .map((b) => ({ ...b, count: 1 / (1 / b.count + 1 / TRUST) }));
  if (seen.length === 0) return [];
  const white: readonly NoiseComponent[] = [{ variance: 1, time: 0 }];
  const slow: NoiseComponent[] = [];
  for (let time = interval; time / SPACING < duration; time *= SPACING) slow.push({ variance: 1, time });
  const longest = seen[seen.length - 1].size;

  const shapes = { white: shapeOf(white, seen, interval), slow: shapeOf(slow, seen, interval) };
  const plain = fit(seen, [shapes.white]);
  if (seen.length < 2) return plain.components;
  const flicker = fit(seen, [shapes.white, shapes.slow]);
  const chosen = plain.deviance - flicker.deviance > BELIEF ? flicker : plain;
  const expected = Math.max(1, seen.length - 2);
  if (chosen.deviance <= expected + 3 * Math.sqrt(2 * expected)) return chosen.components;
  let best = chosen;
  for (let size = 1; size <= longest / 2; size *= 2) {
    const averaging = shapeOf([{ variance: 1, time: size * interval }], seen, interval);
    const filtered = fit(seen, [shapes.white, shapes.slow, averaging]);
    if (filtered.deviance < best.deviance - BELIEF) best = filtered;
  }
  return best.components;
}

/** Components of fixed proportions, and the variance they give the contrast of each block length. */
interface PartShape {
  readonly components: readonly NoiseComponent[];
  readonly variances: readonly number[];
}

function shapeOf(components: readonly NoiseComponent[], blocks: readonly BlockVariance[], interval: number): PartShape {
  return { components, variances: blocks.map((b) => contrastVariance(components, b.size, interval)) };
}

/** Components below this share of the largest are not worth their pass over the readings. */
const NOTHING = 1e-6;

interface Fitted {
  readonly components: readonly NoiseComponent[];
  readonly deviance: number;
}

function fit(blocks: readonly BlockVariance[], parts: readonly PartShape[]): Fitted {
  const shapes = parts.map((part) => Float64Array.from(part.variances));
  const variances = Float64Array.from(blocks, (b) => b.variance);
  const counts = Float64Array.from(blocks, (b) => b.count);
  const amplitudes = Float64Array.from(shapes, (shape) => variances[0] / shape[0] / parts.length);
  const model = (j: number): number => {
    let sum = 0;
    for (let k = 0; k < shapes.length; k++) sum += amplitudes[k] * shapes[k][j];
    return sum;
  };
  for (let round = 0; round < 400; round++) {
    let change = 0;
    for (let k = 0; k < parts.length; k++) {
      const shape = shapes[k];
      let up = 0;
      let down = 0;
      for (let j = 0; j < shape.length; j++) {
        const m = model(j);
        up += (counts[j] * shape[j] * variances[j]) / (m * m);
        down += (counts[j] * shape[j]) / m;
      }
      amplitudes[k] *= up / down;
      change = Math.max(change, Math.abs(up / down - 1));
    }
    // What is left to go in all further rounds is below the rounding of the sums.
    if (change < 1e-15) break;
  }
  let deviance = 0;
  blocks.forEach((b, j) => {
    const ratio = b.variance / model(j);
    deviance += b.count * (ratio - 1 - Math.log(ratio));
  });
  const all = parts.flatMap((part, k) =>
    part.components.map((c) => ({ variance: amplitudes[k] * c.variance, time: c.time })),
  );
  const most = Math.max(...all.map((c) => c.variance));
  const components = all.filter((c) => c.variance > NOTHING * most);
  return { components, deviance };
}

/**
 * Variance of the contrast of neighbouring blocks of `size` readings on an even grid: closed sums of the geometric
 * autocorrelation exp(-lag·interval/time) of each component.
 */
export function contrastVariance(components: readonly NoiseComponent[], size: number, interval: number): number {
  let total = 0;
  for (const { variance, time } of components) {
    if (time === 0) {
      total += variance / size;
      continue;
    }
    const r = Math.exp(-interval / time);
    const rest = -Math.expm1(-interval / time);
    const all = -Math.expm1((-interval * size) / time);
    const own = (size + (2 * r * (size - all / rest)) / rest) / (size * size);
    const pair = ((all / rest) * (all / rest)) / (size * size);
    const further = r ** size;
    let sum = LAGS[0] * own;
    for (let apart = 1, covariance = pair * r; apart < LAGS.length; apart++, covariance *= further) {
      sum += LAGS[apart] * covariance;
    }
    total += variance * Math.max(0, sum);
  }
  return total;
}
