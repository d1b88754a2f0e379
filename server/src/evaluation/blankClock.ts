import type { RawRun, Segment } from '../runs/run';
import { programmeOffset } from '../runs/programmeOffset';
import { findSegments } from '../runs/segments';

/** The run that blanks are matched to. */
export interface BlankTarget {
  readonly time: Float64Array;
  readonly temperature: Float64Array | null;
  readonly segments: readonly Segment[];
}

/** Times of a blank (s) on the clock of the run, and its segments; null where the blank has no time. */
export interface BlankClock {
  readonly time: Float64Array;
  readonly temperature: Float64Array | null;
  readonly segments: readonly Segment[];
}

/**
 * Sets the clock of a blank to that of the run: as exported where both programmes agree, else shifted so that their first
 * ramps meet (a record that was started earlier or later). What still disagrees is told by `blank-mismatch`.
 */
export function blankClock(target: BlankTarget, raw: RawRun): BlankClock | null {
  const column = (signal: string) => raw.columns.find((c) => c.signal === signal)?.values ?? null;
  const time = column('time');
  const temperature = column('temperature');
  if (time === null) return null;
  if (temperature === null) return { time, temperature, segments: [] };
  const segments = findSegments(time, temperature);
  if (target.temperature === null) return { time, temperature, segments };
  const run = { time: target.time, temperature: target.temperature, segments: target.segments };
  const offset = programmeOffset(run, { time, temperature, segments }) ?? 0;
  if (offset === 0) return { time, temperature, segments };
  return {
    time: time.map((t) => t + offset),
    temperature,
    segments: segments.map((s) => ({ ...s, start: s.start + offset, end: s.end + offset })),
  };
}
