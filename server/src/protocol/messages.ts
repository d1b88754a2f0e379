import type {
  CursorAnswer,
  CursorRequest,
  EdgeEdit,
  EdgePreview,
  EdgeRequest,
  SamplesAnswer,
  SamplesRequest,
  TextRange,
  ViewChoices,
  ViewState,
} from './view';

/** Names of the requests and notifications beyond the standard ones; the same in every client. */
export const method = {
  /** Request, client to server: `WatchParams` → null. Starts or changes what is watched under an id. */
  watch: 'thermogloss/watch',
  /** Notification, client to server: `{ id }`. */
  unwatch: 'thermogloss/unwatch',
  /** Notification, server to client: `StateParams`. */
  state: 'thermogloss/state',
  samples: 'thermogloss/samples',
  cursor: 'thermogloss/cursor',
  edgePreview: 'thermogloss/edgePreview',
  edgeEdit: 'thermogloss/edgeEdit',
  /** Request: `{ uri, position }` → `{ statement, result } | null`: what the caret stands on. */
  statementAt: 'thermogloss/statementAt',
  /** Request: `{ uri, statement }` → `{ uri, range } | null`: where a statement stands now. */
  locate: 'thermogloss/locate',
  /** Request: `{ path: uri, method: uri | null }` → `DraftAnswer`. */
  draft: 'thermogloss/draft',
  /** Request: `{ uri, format }` → `{ text }`. The results of a gloss as text, TSV, HTML, CSV or Markdown. */
  table: 'thermogloss/table',
  /** Request: `{ uri }` → null. Computes the results of the text as it stands, whatever `refresh` says. */
  evaluate: 'thermogloss/evaluate',
  /** Request: `ApproveParams` → `ApproveAnswer`. What approving would write; the client writes it. */
  approve: 'thermogloss/approve',
  /** Request: `{ uri }` → `{ name } | null`: who may be about to approve, as version control knows them. */
  approver: 'thermogloss/approver',
  /** Notification, server to client: `StatusParams`, for the status item. */
  status: 'thermogloss/status',
} as const;

export interface WatchParams {
  /** Chosen by the client, one a panel. */
  readonly id: string;
  readonly uri: string;
  readonly choices: ViewChoices;
  readonly editable: boolean;
  /** Highest revision the panel was ever sent: the next counts on from it, also under a server that was started again. */
  readonly after?: number;
}

export interface StateParams {
  readonly id: string;
  readonly state: ViewState;
}

export interface StatusParams {
  readonly uri: string;
  readonly version: number;
  readonly computing: boolean;
  readonly errors: number;
  readonly warnings: number;
  /** `11 results, 1 warning`. */
  readonly text: string;
}

export type DraftAnswer =
  | { readonly ok: true; readonly text: string; readonly uri: string; readonly notes: readonly string[] }
  | { readonly ok: false; readonly message: string };

export interface ApproveParams {
  readonly uri: string;
  readonly by: string;
  /** The day where the person is, `2026-10-02`: the server knows no clock. */
  readonly on: string;
  readonly because: string | null;
}

export type ApproveAnswer =
  | {
      readonly ok: true;
      readonly uri: string;
      /** Of the text that the edits are for. */
      readonly version: number;
      readonly edits: readonly { readonly range: TextRange; readonly text: string }[];
      /** The file beside the gloss, whole. */
      readonly record: { readonly uri: string; readonly text: string };
      readonly digest: string;
    }
  /** `reason`: asked again with one it may be done. */
  | { readonly ok: false; readonly needs: 'reason' | 'other'; readonly message: string };

/** Everything the web view keeps over edits, theme switch, hiding and reload. Small JSON. */
export interface KeptView {
  readonly uri: string;
  readonly pinned: boolean;
  readonly choices: ViewChoices;
  /** Visible range of the abscissa; null: the whole data. */
  readonly visible: { readonly from: number; readonly to: number } | null;
  /** Visible ordinate range by lane, where a person chose one. */
  readonly ordinates: Readonly<Record<string, { readonly from: number; readonly to: number }>>;
  readonly laneOrder: readonly string[];
  readonly laneHeights: Readonly<Record<string, number>>;
  readonly hiddenLanes: readonly string[];
  readonly selected: string | null;
  readonly sort: { readonly column: string; readonly down: boolean } | null;
  readonly openRows: readonly string[];
  readonly scroll: number;
  readonly allRows: boolean;
}

/** From the web view to the client. Requests carry a `call` number, answered by a message with the same number. */
export type FromView =
  | { readonly type: 'ready' }
  | { readonly type: 'choices'; readonly choices: ViewChoices }
  | { readonly type: 'kept'; readonly kept: KeptView }
  | { readonly type: 'samples'; readonly call: number; readonly request: SamplesRequest }
  | { readonly type: 'cursor'; readonly call: number; readonly request: CursorRequest }
  | { readonly type: 'edgePreview'; readonly call: number; readonly request: EdgeRequest }
  | { readonly type: 'edgeEdit'; readonly call: number; readonly request: EdgeRequest }
  /** Explicit activation: the caret goes to the statement (or to a finding's place). */
  | {
      readonly type: 'reveal';
      readonly statement: string | null;
      readonly uri: string;
      readonly range: TextRange | null;
      readonly revision: number;
    }
  | { readonly type: 'pin'; readonly pinned: boolean }
  | { readonly type: 'undo' }
  | { readonly type: 'redo' }
  | { readonly type: 'command'; readonly command: string; readonly argument: string }
  | {
      readonly type: 'save';
      readonly call: number;
      readonly name: string;
      readonly mime: string;
      readonly base64: string;
    }
  | { readonly type: 'copyText'; readonly call: number; readonly text: string }
  | { readonly type: 'fault'; readonly message: string };

/** Colours of a picture that is copied or saved. */
export type ExportTheme = 'light' | 'dark' | 'print' | 'current';

/** From the client to the web view. */
export type ToView =
  | { readonly type: 'state'; readonly state: ViewState }
  | { readonly type: 'kept'; readonly kept: KeptView }
  | { readonly type: 'pinned'; readonly pinned: boolean }
  /** The caret moved: the statement it stands on. Moves no focus and is never answered with `reveal`. */
  | { readonly type: 'caret'; readonly statement: string | null }
  | { readonly type: 'samples'; readonly call: number; readonly answer: SamplesAnswer | null }
  | { readonly type: 'cursor'; readonly call: number; readonly answer: CursorAnswer | null }
  | { readonly type: 'edgePreview'; readonly call: number; readonly answer: EdgePreview | null }
  /** The edit was applied, or why not. */
  | { readonly type: 'edgeEdit'; readonly call: number; readonly answer: EdgeEdit | null }
  /** Answer to `save` and to `copyText`. */
  | { readonly type: 'saved'; readonly call: number; readonly ok: boolean; readonly reason: string }
  /** Settings of the editor that concern the view; sent after `ready` and when they change. */
  | { readonly type: 'preferences'; readonly exportTheme: ExportTheme }
  | { readonly type: 'connection'; readonly up: boolean; readonly text: string };
