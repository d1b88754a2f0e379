import { mergedParts } from './parts';
import { standardUncertainty } from './standardUncertainty';
import type { Uncertain } from './uncertain';

/** Covariance of two values through the inputs they share (JCGM 100, F.1.2.3). In the product of their units. */
export function covariance(a: Uncertain, b: Uncertain): number {
  const byInput = new Map(mergedParts(b.parts).map((part) => [part.input, part.u]));
  return mergedParts(a.parts).reduce((sum, part) => sum + part.u * (byInput.get(part.input) ?? 0), 0);
}

/** Correlation coefficient, -1..1; 0 where either value is exact. */
export function correlation(a: Uncertain, b: Uncertain): number {
  const scale = standardUncertainty(a) * standardUncertainty(b);
  return scale === 0 ? 0 : Math.max(-1, Math.min(1, covariance(a, b) / scale));
}
