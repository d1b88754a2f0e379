import type { Revision } from '../../base/ancestry';
import type { ComparedResult } from '../diff/compared';
import type { Change, DiffRow } from '../diff/model';

/** One result through the revisions; text, JSON, CSV and Markdown are written from it. */
export interface HistoryModel {
  /** As it was asked for. */
  readonly name: string;
  readonly gloss: string;
  /** Newest first. */
  readonly rows: readonly HistoryRow[];
  readonly end: HistoryEnd;
}

/** Why there is no older row. */
export type HistoryEnd =
  | { readonly kind: 'begins' | 'uncommitted' | 'limit' }
  /** What came before that commit is not in this clone. */
  | { readonly kind: 'shallow'; readonly from: string }
  /** What says which revisions take part further back cannot be read: why, with the command that fetches it. */
  | { readonly kind: 'content'; readonly message: string }
  | { readonly kind: 'since'; readonly revision: string };

/** `oldest here`: what came before is not in this clone, so that nobody can say it was the first. */
export type HistoryStatus = DiffRow['status'] | 'first' | 'oldest here' | 'absent';

export interface HistoryRow {
  /** null: the working copy. */
  readonly revision: Revision | null;
  /** Path of the gloss there, and its path before where that was another. */
  readonly gloss: string;
  readonly was: string | null;
  readonly id: string;
  readonly result: ComparedResult | null;
  /** Why there is no number. */
  readonly reason: string | null;
  readonly status: HistoryStatus;
  /** Against the one before; null: there is none, or neither has the result. */
  readonly diff: DiffRow | null;
  /** A merge in which both sides changed what takes part: it also holds what the other side changed. */
  readonly isMerge: boolean;
  /** The id that was followed in newer rows and is not here, where the name asked for is followed again from here on. */
  readonly again: string | null;
  /** What its causes name. */
  readonly changes: readonly Change[];
}
