import { compounds } from './compounds';
import { metals } from './metals';
import { minerals } from './minerals';
import { polymers, specimenClasses } from './polymers';
import type { Specimen } from './specimen';
import { indexed } from './words';

/** Everything `contains` is understood to mean. */
export const specimens: readonly Specimen[] = [...minerals, ...compounds, ...polymers, ...specimenClasses, ...metals];

const find = indexed(specimens);

/**
 * A specimen by name, a usual other name or its formula (`calcite`, `PVC`, `CaCO3`, `hematite`); a plural in -s is
 * tried as its singular. Null: not in the tables, so nothing can be said about it.
 */
export function findSpecimen(words: string): Specimen | null {
  return find(words) ?? (/[a-z]s$/.test(words) ? find(words.slice(0, -1)) : null);
}
