import type { Snapshot } from '../../engine/snapshot';

/** One evaluated gloss with what a report needs besides it. */
export interface ReportInput {
  readonly snapshot: Snapshot;
  readonly figures: readonly ReportFigure[];
  /** SHA-256 of the text of the gloss, as that of its data; null: not known. */
  readonly identity: string | null;
  /** The commit the text stands in, in words; null: none is known. */
  readonly revision: string | null;
  /** Who stands for the results, against the record of that; in the order of the gloss. */
  readonly approvals: readonly ReportApproval[];
}

export interface ReportApproval {
  readonly by: string;
  /** `2026-10-02`. */
  readonly on: string;
  readonly because: string | null;
  readonly digest: string;
  /** `unknown`: its record is missing. */
  readonly state: 'holds' | 'broken' | 'unknown';
  /** What differs from the record, in words. */
  readonly why: readonly string[];
}

/** A picture of the curves as SVG, which marks direction and conditions itself. */
export interface ReportFigure {
  readonly caption: string;
  readonly svg: string;
}

export interface ReportOptions {
  /** Day of issue, `2026-10-02`; null: that of the latest approval that holds, else not issued. No clock is read. */
  readonly issued: string | null;
}

/** What a report says, before it is HTML or Markdown. All texts are plain. */
export interface ReportSection {
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

export type ReportBlock =
  | { readonly block: 'text'; readonly text: string }
  | { readonly block: 'list'; readonly items: readonly string[] }
  | { readonly block: 'facts'; readonly facts: readonly Fact[] }
  | {
      readonly block: 'table';
      readonly name: string;
      readonly headers: readonly string[];
      readonly rows: readonly (readonly string[])[];
      /** Columns of numbers, from 0. */
      readonly numbers: readonly number[];
    }
  | { readonly block: 'figure'; readonly figure: ReportFigure };

/** One thing a report states; null: the gloss does not say it, and the report says so. */
export interface Fact {
  readonly label: string;
  readonly value: string | null;
  /** The standard that asks for it; null: none of the three. */
  readonly asked: string | null;
}

export function fact(label: string, value: string | null, asked: string | null = null): Fact {
  return { label, value: value === '' ? null : value, asked };
}
