import type { Leg } from './legs';

/** Levels are this far apart (K). */
export const step = 0.25;

/**
 * Levels of the band in which a hold must keep: 2 K, into which overshoot, ripple and drift of a furnace fit, and more
 * where the noise of the temperature (standard deviation, K) needs it.
 */
export function bandLevels(noise: number): number {
  return Math.max(8, Math.ceil((1.5 + 6 * noise) / step));
}

/** When a leg passes each of many levels, upwards in its own direction. */
export interface Passages {
  /** Level `g` is `base + g * step` in the leg's direction (temperature times its direction). */
  readonly base: number;
  readonly levels: number;
  /** Index of the first sample at or above the level. */
  readonly first: Int32Array;
  /** Index of the last sample at or below the level. */
  readonly last: Int32Array;
}

export function passages(temperature: Float64Array, { from, to, direction }: Leg): Passages {
  let base = Infinity;
  let top = -Infinity;
  for (let i = from; i <= to; i++) {
    const u = direction * temperature[i];
    if (u < base) base = u;
    if (u > top) top = u;
  }
  // The last level lies at or above the highest temperature.
  const levels = Math.ceil((top - base) / step) + 1;
  const first = new Int32Array(levels).fill(to);
  const last = new Int32Array(levels).fill(from);
  let next = 0;
  // Comparing with the next level is a tenth of the work of dividing by the step, which is exact in binary.
  let level = 0;
  for (let i = from; i <= to; i++) {
    const above = direction * temperature[i] - base;
    if (!(above >= level)) continue;
    for (; next < levels && level <= above; level = next * step) first[next++] = i;
    if (next === levels) break;
  }
  next = levels - 1;
  level = next * step;
  for (let i = to; i >= from; i--) {
    const above = direction * temperature[i] - base;
    if (!(above <= level)) continue;
    for (; next >= 0 && level >= above; level = next * step) last[next--] = i;
    if (next < 0) break;
  }
  return { base, levels, first, last };
}
