import type { Verdict } from '../../evaluation/result';
import type { ComparedResult } from './compared';

/** Everything a comparison of two sides comes to; text, JSON, Markdown and HTML are written from it. */
export interface DiffModel {
  readonly from: string;
  readonly to: string;
  readonly glosses: readonly GlossDiff[];
}

export interface GlossDiff {
  readonly gloss: string;
  /** Its path on the old side where it was another; null: the same, or it was not there. */
  readonly was: string | null;
  readonly status: 'both' | 'added' | 'removed';
  readonly rows: readonly DiffRow[];
  readonly verdicts: readonly VerdictRow[];
  /** What differs between the two sides of this gloss, whether or not a result moved by it. */
  readonly changes: readonly Change[];
  /** Version of the program where it differs: old and new. */
  readonly program: { readonly old: string; readonly new: string } | null;
  /** Why a side could not be computed at all. */
  readonly trouble: { readonly side: 'old' | 'new'; readonly reason: string } | null;
}

export type RowStatus = 'added' | 'removed' | 'changed' | 'within tolerance' | 'equal' | 'cannot compute';

export interface DiffRow {
  readonly id: string;
  /** Its id on the old side where its statement was renamed; null: the same. */
  readonly was: string | null;
  readonly status: RowStatus;
  readonly old: ComparedResult | null;
  readonly new: ComparedResult | null;
  /** new − old, in `unit`; null where one is no number or the units cannot be compared. */
  readonly difference: number | null;
  /** Of the old value; null where that is zero or no number. */
  readonly relative: number | null;
  readonly unit: string;
  /** The standard uncertainty its tolerance is a fraction of: combined of both, or the older one; null unknown. */
  readonly uncertainty: number | null;
  /** What it might move by. */
  readonly tolerance: number | null;
  /** Words for what numbers do not say: `not detected (< 0.05 %) before`, `unit changed from mg to %`. */
  readonly remark: string | null;
  readonly causes: readonly Cause[];
  /** What is left of the difference when each cause's own effect is taken off; null with fewer than two causes. */
  readonly together: number | null;
  readonly main: boolean;
}

export interface VerdictRow {
  readonly label: string;
  readonly status: 'added' | 'removed' | 'changed' | 'equal';
  readonly old: { readonly verdict: Verdict; readonly text: string } | null;
  readonly new: { readonly verdict: Verdict; readonly text: string } | null;
  /** The limit itself was changed. */
  readonly limitChanged: boolean;
}

export type ChangeKind = 'decision' | 'method' | 'data' | 'blank' | 'rule';

/** One input that differs. */
export interface Change {
  /** Names it in one comparison: `step First`, `method/let dolomite`, `data`, `blank z.csv`. */
  readonly key: string;
  readonly kind: ChangeKind;
  /** `window of First 640..790 °C → 655..805 °C`, `data of run vq217-1.csv replaced`. */
  readonly text: string;
  /** Name of the statement it is about, where results of other statements do not depend on it; null: the whole run. */
  readonly about: string | null;
}

export interface Cause {
  readonly change: string;
  /** Difference of this result when the change alone is made on the old side; null where that could not be computed. */
  readonly effect: number | null;
}
