import type { Abscissa } from '../../protocol/view';
import type { RunCurve } from './runCurves';
import { noSamples, samplesIn, type Samples } from './samplesIn';

/**
 * What is drawn of a curve between `from` and `to` (°C, or s of the file's own time) for so many pixel columns, in a unit
 * of its lane: see `samplesIn`. Nothing where the curve cannot be drawn over that abscissa or in that unit.
 */
export function samples(
  curve: RunCurve,
  abscissa: Abscissa,
  from: number,
  to: number,
  pixels: number,
  unit: string,
): Samples {
  const drawn = curve.drawn(abscissa);
  const factor = curve.factor(unit);
  return drawn === null || factor === null ? noSamples : samplesIn(drawn, from, to, pixels, factor);
}
