import type { Segment } from './run';
import { temperatureMap } from './temperatureMap';

/** A run as far as its programme goes: s, °C. */
export interface ProgrammeRun {
  readonly time: Float64Array;
  readonly temperature: Float64Array;
  readonly segments: readonly Segment[];
}

/** Runs whose temperatures agree this well (K) on their own times are not shifted. */
const agrees = 2;

/**
 * Seconds to add to the times of `other` so that its programme runs with that of `run`: 0 where the temperatures of both
 * first ramps agree within 2 K at equal times, else the shift that brings these ramps together (clocks that start
 * elsewhere). Null: their first ramps go in different directions or share no temperatures.
 */
export function programmeOffset(run: ProgrammeRun, other: ProgrammeRun): number | null {
  const own = firstRamp(run);
  const their = firstRamp(other);
  if (own === null || their === null) return own === their ? 0 : null;
  if (own.direction !== their.direction) return null;
  const low = Math.max(Math.min(own.from, own.to), Math.min(their.from, their.to));
  const high = Math.min(Math.max(own.from, own.to), Math.max(their.from, their.to));
  if (!(high > low)) return null;
  const ownMap = temperatureMap(run.time, run.temperature, own);
  const theirMap = temperatureMap(other.time, other.temperature, their);
  const shifts: number[] = [];
  for (let k = 1; k <= 9; k++) {
    const temperature = low + (k / 10) * (high - low);
    const ownTime = ownMap.timeAt(temperature);
    const theirTime = theirMap.timeAt(temperature);
    if (ownTime !== null && theirTime !== null) shifts.push(ownTime - theirTime);
  }
  if (shifts.length === 0) return null;
  shifts.sort((a, b) => a - b);
  const shift = shifts[shifts.length >> 1];
  return Math.abs(shift) * (Math.abs(own.rate ?? 0) / 60) <= agrees ? 0 : shift;
}

function firstRamp({ segments }: ProgrammeRun): Segment | null {
  return segments.find(({ direction }) => direction !== 'hold') ?? null;
}
