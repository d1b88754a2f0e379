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
  for (let i = from; i <= to && next < levels; i++) {
    const reached = Math.floor((direction * temperature[i] - base) / step);
    while (next < levels && next <= reached) first[next++] = i;
  }
  next = levels - 1;
  for (let i = to; i >= from && next >= 0; i--) {
    const below = Math.ceil((direction * temperature[i] - base) / step);
    while (next >= 0 && next >= below) last[next--] = i;
  }
  return { base, levels, first, last };
}
