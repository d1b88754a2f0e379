import type { Segment } from '../run';
import { temperatureNoise, usableSamples } from '../segmentation/samples';

/** The deepest way back of the temperature inside one ramp. */
export interface Reversal {
  readonly segment: Segment;
  /** K below the highest temperature reached before (above the lowest, when cooling). */
  readonly depth: number;
  /** Time (s) and temperature (°C) of its turn. */
  readonly at: number;
  readonly temperature: number;
  /** Three standard deviations of the temperature noise, or 0.3 K. */
  readonly limit: number;
}

/**
 * Rule A06: where the temperature of a ramp goes back by more than 0.3 K and three standard deviations of its noise
 * (self-heating, melting, a fault of the furnace). The first and last 3 K of a ramp are the furnace's own corner and do not
 * count.
 */
export function temperatureReversals(
  time: Float64Array,
  temperature: Float64Array,
  segments: readonly Segment[],
): Reversal[] {
  const found: Reversal[] = [];
  for (const segment of segments) {
    if (segment.direction === 'hold') continue;
    const { first, last } = segment;
    const samples = usableSamples(time.subarray(first, last), temperature.subarray(first, last));
    const sign = segment.direction === 'heating' ? 1 : -1;
    const noise = temperatureNoise(samples.temperature);
    const low = sign * segment.from + 3;
    const high = sign * segment.to - 3;
    // The highest of many noisy readings lies above the curve: three sigma on either side.
    const limit = Math.max(0.3, 3 * noise);
    let reached = -Infinity;
    let depth = 0;
    let at = 0;
    for (let i = 0; i < samples.time.length; i++) {
      const u = sign * samples.temperature[i];
      if (u < low || reached > high) continue;
      if (u > reached) reached = u;
      if (reached - u > depth) {
        depth = reached - u;
        at = i;
      }
    }
    if (depth > limit + 3 * noise) {
      found.push({ segment, depth, at: samples.time[at], temperature: samples.temperature[at], limit });
    }
  }
  return found;
}
