import type { Snapshot } from '../engine/snapshot';
import type { Result } from '../evaluation/result';

/**
 * Results in the order in which their names are written: those of the method first, then those of the gloss. (An override
 * keeps the place of what it overrides; the order of evaluation follows the names and would scatter them.)
 */
export function inReadingOrder(snapshot: Snapshot, results: readonly Result[]): Result[] {
  const places = new Map<string, number>();
  for (const text of [snapshot.method, snapshot.gloss]) {
    for (const { name } of text?.tree.statements ?? []) {
      if (name !== null && !places.has(name)) places.set(name, places.size);
    }
  }
  const placeOf = (r: Result): number => places.get(r.name) ?? places.size;
  return [...results].sort((a, b) => placeOf(a) - placeOf(b));
}
