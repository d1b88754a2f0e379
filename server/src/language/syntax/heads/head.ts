import type { Common, Statement } from '../../model';
import type { Clauses } from '../clauseValues';
import type { LineReader } from '../reader';

/** A head that was read: it becomes a statement when its clauses are known. */
export interface Head {
  build(common: Common, clauses: Clauses): Statement;
}

/** Reads what stands behind a keyword; null with a failure noted at the reader. */
export type HeadReader = (reader: LineReader, override: boolean) => Head | null;
