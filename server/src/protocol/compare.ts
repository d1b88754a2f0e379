import type { TextRange } from './view';

/** What results are compared with, and how the comparison and a report come to the client. Plain data. */

/** Names of the requests; `CompareParams` → `CompareAnswer` and so on. */
export const compareMethod = {
  /** Request: `{ uri }` → `RevisionNames | null`; null: the gloss is in no git repository, or there is no git program. */
  revisions: 'thermogloss/revisions',
  /** Request: `CompareParams` → `CompareAnswer`. Takes the texts that are open as they stand, saved or not. */
  compare: 'thermogloss/compare',
  /** Request: `OldTextParams` → `{ text } | null`; null: that side has no such text. */
  oldText: 'thermogloss/oldText',
  /** Request: `ReportParams` → `ReportAnswer`. */
  report: 'thermogloss/report',
} as const;

/**
 * The old side. A revision by its name (`HEAD`, a branch, a tag, a commit), `index`, or `main...` for the last commit that
 * HEAD and main have in common; `index:…` for the index as it was compared; or a file: saved results (`.json`) or another gloss.
 */
export type ComparedWith =
  { readonly kind: 'revision'; readonly name: string } | { readonly kind: 'file'; readonly uri: string };

/** For lists to choose from; those committed to last come first. */
export interface RevisionNames {
  readonly branches: readonly string[];
  readonly tags: readonly string[];
}

export interface CompareParams {
  /** The gloss; of a method, the run glosses that name it are compared. */
  readonly uri: string;
  readonly with: ComparedWith;
}

export type CompareAnswer =
  { readonly ok: true; readonly comparison: Comparison } | { readonly ok: false; readonly message: string };

export interface Comparison {
  /** Names of both sides: `HEAD`, `working copy`. */
  readonly from: string;
  readonly to: string;
  /** Abbreviated commit of the old side; null: it is none. */
  readonly commit: string | null;
  /** What it comes to, in the words of every other format. */
  readonly summary: string;
  readonly glosses: readonly ComparedGlossRows[];
}

export interface ComparedGlossRows {
  /** Relative to the root. */
  readonly title: string;
  /** The gloss now; null: it is gone. */
  readonly uri: string | null;
  readonly status: 'both' | 'added' | 'removed';
  readonly remarks: readonly string[];
  /** Results that moved, came, went or cannot be computed. */
  readonly rows: readonly ComparedRow[];
  /** Quantities of less weight that did so too. */
  readonly further: readonly ComparedRow[];
  readonly verdicts: readonly {
    readonly label: string;
    readonly old: string;
    readonly new: string;
    readonly cause: string;
  }[];
  /** Results that are not shown, for they are within tolerance. */
  readonly quiet: number;
  /** `choices.against` or an entry of `choices.overlays` that lays the old side over the curves; null: there is none. */
  readonly over:
    { readonly kind: 'against'; readonly name: string } | { readonly kind: 'overlay'; readonly uri: string } | null;
}

export interface ComparedRow {
  readonly id: string;
  readonly result: string;
  readonly old: string;
  readonly new: string;
  readonly difference: string;
  /** Of the value before, with its unit. */
  readonly relative: string;
  /** `failed`: it cannot be computed on one side. */
  readonly status: 'added' | 'removed' | 'changed' | 'failed';
  readonly cause: string;
  readonly place: ComparedPlace | null;
}

/** The changed line: where the statement stands that moved the result, else the one that computes it. */
export interface ComparedPlace {
  /** The text now; null: it is gone. */
  readonly uri: string | null;
  readonly range: TextRange | null;
  /** The text on the old side; null: there is none to show. */
  readonly old: OldTextParams | null;
  readonly oldRange: TextRange | null;
}

export interface OldTextParams {
  /** Of the file on the old side, as if it lay in the folder. */
  readonly uri: string;
  readonly with: ComparedWith;
}

export interface ReportParams {
  readonly uri: string;
  readonly format: 'html' | 'markdown';
  /** Day of issue, `2026-10-02`; null: not issued. */
  readonly issued: string | null;
}

export type ReportAnswer =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string };
