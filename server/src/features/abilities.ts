/** What the client can show or apply, as far as an answer depends on it. */
export interface Abilities {
  readonly snippets: boolean;
  readonly labelDetails: boolean;
  readonly commitCharacters: boolean;
  /** One completion for writing before what stands behind the cursor, and for writing over it. */
  readonly insertReplace: boolean;
  /** `markdown` where the client reads it, by the place it is shown in. */
  readonly completionFormat: TextFormat;
  readonly hoverFormat: TextFormat;
  readonly signatureFormat: TextFormat;
  /** The tooltip of a hint is asked for when it is looked at. */
  readonly resolvesHints: boolean;
  /** Parameters as offsets into the label. */
  readonly labelOffsets: boolean;
  /** LSP 3.18: no parameter may be the active one. */
  readonly noActiveParameter: boolean;
  /** Code actions that cannot be taken, with the reason. */
  readonly disabledActions: boolean;
  readonly documentChanges: boolean;
  /** LSP 3.18: an edit that leaves the cursor in a place of its own. */
  readonly snippetEdits: boolean;
  /** It runs the command that approves. */
  readonly approves: boolean;
}

export type TextFormat = 'markdown' | 'plaintext';

/** A client that said nothing: plain text, plain edits. */
export const plainClient: Abilities = {
  snippets: false,
  labelDetails: false,
  commitCharacters: false,
  insertReplace: false,
  completionFormat: 'plaintext',
  hoverFormat: 'plaintext',
  signatureFormat: 'plaintext',
  resolvesHints: false,
  labelOffsets: false,
  noActiveParameter: false,
  disabledActions: false,
  documentChanges: true,
  snippetEdits: false,
  approves: false,
};

/** A client that can do all of it. */
export const fullClient: Abilities = {
  snippets: true,
  labelDetails: true,
  commitCharacters: true,
  insertReplace: true,
  completionFormat: 'markdown',
  hoverFormat: 'markdown',
  signatureFormat: 'markdown',
  resolvesHints: true,
  labelOffsets: true,
  noActiveParameter: true,
  disabledActions: true,
  documentChanges: true,
  snippetEdits: true,
  approves: true,
};
