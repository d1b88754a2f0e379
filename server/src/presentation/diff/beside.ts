import { plainNumber } from '../plainNumber';
import { unitText } from '../shown';
import type { ComparedResult } from './compared';
import type { Tolerance } from './tolerance';

/**
 * What stands beside the value of an approved result and is not what was approved, in words: its standard uncertainty moved
 * by more than a fraction of itself and more than the last bits of the value, or its limit. Null: nothing, or sides of equal
 * rank are compared, where only the values count. `factor`: from the older unit to the newer.
 */
export function besideMoved(
  from: ComparedResult,
  to: ComparedResult,
  factor: number,
  tolerance: Tolerance,
): string | null {
  if (tolerance.of !== 'old') return null;
  const words: string[] = [];
  const [was, is] = [times(from.uncertainty, factor), to.uncertainty];
  const value = Math.max(Math.abs(times(from.value, factor) ?? 0), Math.abs(to.value ?? 0));
  const unit = unitText(to.unit);
  if (!near(was, is, tolerance.fraction * Math.abs(was ?? 0), tolerance.relativeFloor * value)) {
    words.push(`its standard uncertainty was ${known(was, unit)}, is ${known(is, unit)}`);
  }
  if (!nearLimits(times(from.limit, factor), to.limit, was, tolerance)) {
    words.push(`its limit was ${known(times(from.limit, factor), unit)}, is ${known(to.limit, unit)}`);
  }
  return words.length === 0 ? null : words.join('; ');
}

/** Whether two results without a value, in one unit, have the same detection limit. */
export function sameLimit(from: ComparedResult, to: ComparedResult, tolerance: Tolerance): boolean {
  if (tolerance.of === 'old') return nearLimits(from.limit, to.limit, from.uncertainty, tolerance);
  // A detection limit follows the noise: a tenth more or less is no news.
  return near(from.limit, to.limit, 0.1 * largest(from.limit, to.limit), 0);
}

/** As a value: within a fraction of the stored uncertainty, or the last bits. */
function nearLimits(was: number | null, is: number | null, u: number | null, tolerance: Tolerance): boolean {
  return near(was, is, tolerance.fraction * (u ?? 0), tolerance.relativeFloor * largest(was, is));
}

/** An unknown number is near an unknown one only. */
function near(a: number | null, b: number | null, ...allowed: readonly number[]): boolean {
  if (a === null || b === null) return a === b;
  return Math.abs(a - b) <= Math.max(...allowed);
}

function largest(a: number | null, b: number | null): number {
  return Math.max(Math.abs(a ?? 0), Math.abs(b ?? 0));
}

function times(x: number | null, factor: number): number | null {
  return x === null ? null : x * factor;
}

function known(x: number | null, unit: string): string {
  return x === null ? 'not known' : `${plainNumber(x, 3)}${unit}`;
}
