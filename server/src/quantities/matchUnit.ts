import { scanUnit, type UnitFailure } from './scanUnit';
import type { Unit } from './unit';

/** A unit found in running text. */
export interface UnitMatch {
  readonly unit: Unit;
  /** First offset behind it. */
  readonly end: number;
  /** Normal spelling. */
  readonly normal: string;
  /** Set where the text is meant as a unit and is a wrong one (`J/g/K`); `end` then covers all of it. */
  readonly failure: UnitFailure | null;
}

/**
 * The longest unit that starts exactly at `offset` (skip blanks before), by whole words: `mW/mg` is one unit, `mW / mg`
 * is `mW` and a division, `mg/n` is `mg` and a division by a name. Null where no unit starts there.
 * Offsets of the failure count from the start of `text`.
 */
export function matchUnit(text: string, offset: number): UnitMatch | null {
  const found = scanUnit(text, offset);
  if (found === null) return null;
  return { unit: found.unit, end: found.end, normal: found.unit.text, failure: found.failure };
}
