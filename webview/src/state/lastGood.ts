import type { ViewState } from '../../../server/src/protocol/view';

/**
 * What to show of a new state: its own picture, or, where a broken text left it without one, the last good picture of the
 * same gloss under the new words. Nothing drawn once is ever taken away by an error.
 */
export function lastGood(before: ViewState | null, next: ViewState): ViewState {
  const gone = next.lanes.length === 0 && before !== null && before.lanes.length > 0;
  if (!gone || before.generation.uri !== next.generation.uri || next.freshness.state === 'current') return next;
  return { ...before, generation: next.generation, freshness: next.freshness, findings: next.findings };
}

/**
 * Whether curves drawn for one state may stand in for those of the next until its own samples are there: the same gloss
 * over the same abscissa, and every lane in the same unit. Else both pictures would be mixed for a moment.
 */
export function drawsAlike(before: ViewState | null, next: ViewState): boolean {
  if (before === null || before.lanes.length === 0) return true;
  if (before.generation.uri !== next.generation.uri || before.choices.abscissa !== next.choices.abscissa) return false;
  return next.lanes.every((lane) => {
    const same = before.lanes.find((other) => other.id === lane.id);
    return same === undefined || same.unit === lane.unit;
  });
}
