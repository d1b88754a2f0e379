import type { FindingCode } from './codes';

/** Error, warning, note (shown as information). */
export type Severity = 'error' | 'warning' | 'note';

/**
 * Where a finding stands. Cached findings hold no absolute position: they name a statement by id and one of its tokens
 * (`head`, `name`, `window.from`, `baseline.value` …). Text that is not a statement is named by its span.
 */
export type Anchor =
  | { readonly statement: string; readonly token: string }
  | { readonly file: GlossRole; readonly span: { readonly start: number; readonly end: number } };

/** Which text of an evaluation: the gloss itself, or the method it imports. */
export type GlossRole = 'gloss' | 'method';

/** One text edit, still by token. */
export type FixEdit =
  | { readonly edit: 'replace'; readonly at: Anchor; readonly text: string }
  | { readonly edit: 'insert-after'; readonly at: Anchor; readonly text: string }
  | { readonly edit: 'delete-statement'; readonly statement: string }
  | { readonly edit: 'insert-clause'; readonly statement: string; readonly text: string }
  /** A new head line (with its clauses) after the named statement, or at the end of the gloss where null. */
  | { readonly edit: 'insert-statement'; readonly after: string | null; readonly text: string };

export interface Fix {
  readonly title: string;
  readonly edits: readonly FixEdit[];
  /** May be applied with others unseen: it changes no number. */
  readonly safe: boolean;
}

export interface RelatedPlace {
  readonly at: Anchor;
  readonly message: string;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly at: Anchor;
  /** One sentence or two, with the numbers. */
  readonly message: string;
  readonly related: readonly RelatedPlace[];
  readonly fixes: readonly Fix[];
  /** Names of results this finding is about, for `allow … on NAME`; null: the statement of the anchor, or the file. */
  readonly about: string | null;
  /** Its effect reaches only these quantities of the statement; absent: all of them. */
  readonly only?: readonly string[];
}
