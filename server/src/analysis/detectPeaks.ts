import type { Curve } from './curve';
import { heatEffects, type DetectedPeak, type DetectionOptions } from './heatEffects';
import type { Noise } from './noise';

/** The peaks a draft proposes in one segment, in order of time. `curve` holds that segment only, endothermic positive. */
export function detectPeaks(curve: Curve, noise: Noise, options: DetectionOptions): readonly DetectedPeak[] {
  return heatEffects(curve, noise, options).filter((effect) => effect.kind === 'peak');
}
