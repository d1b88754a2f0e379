import type { Span } from '../base/span';
import type { Construction, Requirement, Result } from '../evaluation/result';
import type { FindingCode } from '../findings/codes';
import type { Fix, GlossRole, Severity } from '../findings/finding';
import type { Tree } from '../language/tree';
import type { Interpretation, Segment } from '../runs/run';

/** What one revision of one gloss comes to. Plain data, immutable. */
export interface Snapshot {
  readonly gloss: GlossText;
  readonly method: GlossText | null;
  readonly run: RunSummary | null;
  readonly inputs: readonly InputFile[];
  readonly results: readonly Result[];
  readonly requirements: readonly Requirement[];
  readonly findings: readonly PlacedFinding[];
  readonly constructions: readonly Construction[];
}

export interface GlossText {
  readonly path: string;
  /** Relative to the root, with `/`. */
  readonly display: string;
  readonly tree: Tree;
}

export interface RunSummary {
  readonly display: string;
  readonly identity: string;
  readonly points: number;
  readonly segments: readonly (Segment & { readonly gas: string | null })[];
  readonly interpretation: Interpretation;
}

/** A file beside the run that took part. */
export interface InputFile {
  readonly role: 'blank' | 'join' | 'method';
  readonly display: string;
  readonly identity: string;
  readonly interpretation: Interpretation | null;
}

export interface PlacedFinding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly file: GlossRole;
  /** Offsets in the text of that file. */
  readonly span: Span;
  readonly message: string;
  readonly related: readonly { readonly file: GlossRole; readonly span: Span; readonly message: string }[];
  readonly fixes: readonly PlacedFix[];
  /** The reason it was allowed with; null: it stands. */
  readonly allowed: string | null;
}

export interface PlacedFix {
  readonly title: string;
  readonly safe: boolean;
  readonly edits: readonly { readonly file: GlossRole; readonly span: Span; readonly text: string }[];
}

export type { Fix };
