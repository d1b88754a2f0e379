import type { SignalName } from '../../language/model';
import { blocksOf, type Block } from './blocks';
import type { BlankRun } from './context';

/** Means of a blank's signal over stretches of `length` s; none where it lacks the signal. */
export function blankBlocks(blank: BlankRun, signal: SignalName, length: number): Block[] {
  const column = blank.signals.get(signal);
  if (column === undefined || blank.time.length === 0) return [];
  const window = { from: blank.time[0], to: blank.time[blank.time.length - 1] };
  return blocksOf(blank.time, column.values, window, length);
}
