import type { Segment } from '../run';

/** One part of a stated programme. °C, K/min (size), s. */
export type ProgrammePart =
  | { readonly part: 'heat' | 'cool'; readonly from: number | null; readonly to: number; readonly rate: number }
  | { readonly part: 'hold'; readonly seconds: number };

/** A part beside the segment that is its own; null: the run has none. Differences are run minus programme. */
export interface ProgrammeComparison {
  readonly part: number;
  readonly segment: Segment | null;
  /** Relative difference of the rate. */
  readonly rate: number | null;
  /** K. */
  readonly from: number | null;
  readonly to: number | null;
  /** s. */
  readonly hold: number | null;
}

/**
 * Compares a programme with the segments of a run, part by part in time. Ramps that follow each other in one direction are
 * one segment: their parts share it, and their rate is compared by its mean over the whole way. A hold that the run does
 * not show, or shows more, shifts nothing: parts and segments are matched by direction from the start.
 */
export function compareProgramme(
  programme: readonly ProgrammePart[],
  segments: readonly Segment[],
): ProgrammeComparison[] {
  const result: ProgrammeComparison[] = [];
  let at = 0;
  for (let k = 0; k < programme.length;) {
    const part = programme[k];
    const direction = part.part === 'hold' ? 'hold' : part.part === 'heat' ? 'heating' : 'cooling';
    let together = 1;
    while (part.part !== 'hold' && programme[k + together]?.part === part.part) together++;
    const found = nextOf(segments, at, direction);
    const segment = found < 0 ? null : segments[found];
    if (found >= 0) at = found + 1;
    for (let j = 0; j < together; j++) {
      result.push(compare(programme, k + j, segment, j === 0, j === together - 1, together));
    }
    k += together;
  }
  return result;
}

/** The next segment of this direction; a hold must come before the next ramp, a ramp may have a hold before it. */
function nextOf(segments: readonly Segment[], from: number, direction: Segment['direction']): number {
  for (let i = from; i < segments.length; i++) {
    if (segments[i].direction === direction) return i;
    if (direction === 'hold' || segments[i].direction !== 'hold') return -1;
  }
  return -1;
}

function compare(
  programme: readonly ProgrammePart[],
  k: number,
  segment: Segment | null,
  isFirst: boolean,
  isLast: boolean,
  together: number,
): ProgrammeComparison {
  const part = programme[k];
  const none = { part: k, segment, rate: null, from: null, to: null, hold: null };
  if (segment === null) return none;
  if (part.part === 'hold') return { ...none, hold: segment.end - segment.start - part.seconds };
  const rate = together === 1 && segment.rate !== null ? Math.abs(segment.rate) / part.rate - 1 : null;
  return {
    ...none,
    rate,
    from: isFirst && part.from !== null ? segment.from - part.from : null,
    to: isLast ? segment.to - part.to : null,
  };
}
