import type { Curve } from './curve';
import { heatEffects, type DetectedGlass, type DetectionOptions } from './heatEffects';
import type { Noise } from './noise';

/** The glass steps a draft proposes in one segment, in order of time. `curve` holds that segment only. */
export function detectGlass(curve: Curve, noise: Noise, options: DetectionOptions): readonly DetectedGlass[] {
  return heatEffects(curve, noise, options).filter((effect) => effect.kind === 'glass');
}
