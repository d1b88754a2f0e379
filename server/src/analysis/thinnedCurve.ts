import { blockMeans } from './blockMeans';
import { checkedCurve, type Curve } from './curve';
import type { Noise } from './noise';

const known = new WeakMap<Curve, Map<number, Curve>>();

/**
 * The curve averaged in blocks of `size` readings (a power of two), itself a curve; kept as long as the original, because
 * windows that move over a run ask for the same averages again.
 */
export function thinnedCurve(curve: Curve, size: number): Curve {
  if (size === 1) return curve;
  let sizes = known.get(curve);
  if (sizes === undefined) known.set(curve, (sizes = new Map<number, Curve>()));
  let thin = sizes.get(size);
  if (thin === undefined) {
    const means = blockMeans(curve.x, curve.y, { first: 0, last: curve.x.length }, size);
    thin = checkedCurve(means.x, means.y) ?? curve;
    sizes.set(size, thin);
  }
  return thin;
}

/**
 * The noise of such averages; `sigma` stays that of one reading. White parts are divided by `size`, a part of correlation
 * time T keeps 2 (r - 1 + exp(-r)) / r² of its variance, r = length of a block / T, and goes on between blocks with the
 * same T.
 */
export function thinnedNoise(noise: Noise, size: number, length: number): Noise {
  if (size === 1) return noise;
  return {
    ...noise,
    components: noise.components.map(({ variance, time }) => ({
      variance: variance * keptBy(size, length, time),
      time,
    })),
  };
}

/** Share of its variance that the mean of `size` readings, `length` long in all, keeps of noise of a correlation time. */
export function keptBy(size: number, length: number, time: number): number {
  if (!(time > 0)) return 1 / size;
  const r = length / time;
  const kept = r < 1e-3 ? 1 - r / 3 : (2 * (r - 1 + Math.exp(-r))) / r ** 2;
  return Math.max(1 / size, kept);
}

/** The largest power of two of readings whose average still leaves `points` of them in `width` (s). */
export function sizeLeaving(points: number, curve: Curve, width: number): number {
  const { x } = curve;
  const interval = (x[x.length - 1] - x[0]) / (x.length - 1);
  const most = width / interval / points;
  return most < 2 ? 1 : 2 ** Math.floor(Math.log2(most));
}
