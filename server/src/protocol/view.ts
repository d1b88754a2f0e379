import type { Span } from '../base/span';

/**
 * What the curves view draws and what it asks for. Plain data: every text is made by `presentation`, every curve comes as
 * samples of the file. The client passes all of it through unread; the view evaluates nothing.
 */

/** Identifies the picture of one gloss; counts up with every state that is sent for it. */
export interface Generation {
  /** URI of the gloss, as the editor writes it. */
  readonly uri: string;
  /** Version of the document that was evaluated. */
  readonly version: number;
  /** Counts the states of this view. A click or a drag carries it back, so that one on an old picture can be told. */
  readonly revision: number;
}

export type Abscissa = 'temperature' | 'time';

/** What a person chose to see. Changes no number and no text. */
export interface ViewChoices {
  readonly abscissa: Abscissa;
  /** Names of segments that are not shown. */
  readonly hiddenParts: readonly string[];
  /** Chosen unit of a lane, by the lane's id; absent: the first of its units. */
  readonly units: Readonly<Record<string, string>>;
  /** URIs of glosses of the same method laid over this one, at most ten. */
  readonly overlays: readonly string[];
  /** For a method gloss: URI of the run gloss it is shown with; null: the first that names it. */
  readonly run: string | null;
  /** A git revision laid over this one (`HEAD`, a commit); null: none. */
  readonly against: string | null;
}

export const defaultChoices: ViewChoices = {
  abscissa: 'temperature',
  hiddenParts: [],
  units: {},
  overlays: [],
  run: null,
  against: null,
};

/** How fresh the drawn picture is, in words too: `current`, `computing`, `revision 38: line 12 has an error`. */
export interface Freshness {
  readonly state: 'current' | 'computing' | 'stale' | 'empty';
  /** Words for the head line. */
  readonly text: string;
  /** The first error, for a link; null where there is none. */
  readonly error: { readonly uri: string; readonly line: number; readonly span: Span; readonly message: string } | null;
}

/** One atomic state of the view. Everything drawn is in it or asked for with its generation. */
export interface ViewState {
  readonly generation: Generation;
  readonly freshness: Freshness;
  /** `vq217-1 · Dolomitic limestone VQ-217 · 20.052 mg · CO2 50 mL/min`. */
  readonly title: string;
  readonly conditions: readonly string[];
  readonly role: 'run' | 'method';
  /** URIs of the texts whose statements are shown: the run's gloss and its method. A caret in any of them is followed. */
  readonly texts: readonly string[];
  /** The edges may be moved: the text can be edited. */
  readonly editable: boolean;
  readonly choices: ViewChoices;
  readonly parts: readonly Part[];
  readonly lanes: readonly Lane[];
  readonly bands: readonly Band[];
  readonly gasChanges: readonly { readonly time: number; readonly temperature: number; readonly gas: string }[];
  readonly ledger: Ledger;
  readonly findings: readonly ViewFinding[];
  /** Glosses of the same method that may be laid over this one. */
  readonly companions: readonly { readonly uri: string; readonly name: string }[];
  /** Runs laid over it, by curve id of their lanes. */
  readonly overlays: readonly { readonly uri: string; readonly name: string; readonly reason: string | null }[];
  /** For a method: the run glosses that name it. */
  readonly runs: readonly { readonly uri: string; readonly name: string }[];
  /** Offers of an empty view: what could be done, in words, with the command to send. */
  readonly offers: readonly { readonly text: string; readonly command: string; readonly argument: string }[];
}

/** A part of the programme: heating 1, hold 1, cooling 1. */
export interface Part {
  readonly name: string;
  readonly shown: boolean;
  /** s of the file's own time. */
  readonly start: number;
  readonly end: number;
  /** °C. */
  readonly from: number;
  readonly to: number;
}

export interface Range {
  readonly from: number;
  readonly to: number;
}

export interface Lane {
  /** `mass`, `rate`, `heatflow`, `ion(44)`; `difference:mass` for the difference to another revision. */
  readonly id: string;
  /** `m/%`, `−dm/dt/(%/min)`, `Φ/mW`: quantity over unit (ISO 80000-1). */
  readonly label: string;
  readonly name: string;
  readonly unit: string;
  readonly units: readonly string[];
  /** `endothermic up`, `endothermic down`, `endothermic direction not declared`; null on lanes without one. */
  readonly direction: string | null;
  /** Range of the whole data in the chosen unit, of the parts shown. */
  readonly extent: Range;
  readonly curves: readonly CurveId[];
}

/** One monotone stretch: one segment of one run in one lane. Its samples are asked for by `id`. */
export interface CurveId {
  readonly id: string;
  readonly part: string;
  /** Whose it is: the run of this gloss, one laid over it, or the revision compared with. */
  readonly of: 'run' | 'overlay' | 'against';
  /** Name for legend and cursor; empty for the run itself. */
  readonly name: string;
  readonly points: number;
}

/** The window of one statement through the lanes it reads. */
export interface Band {
  /** Id of the statement, as in the tree: `step First`, `override step First`. */
  readonly statement: string;
  readonly name: string;
  readonly kind: string;
  readonly lanes: readonly string[];
  readonly part: string;
  readonly from: Edge;
  readonly to: Edge;
  /** Names of bands it overlaps with a finding. */
  readonly overlaps: readonly string[];
  /** Worst finding about it. */
  readonly severity: 'error' | 'warning' | 'note' | null;
  /** Construction of the statement, drawn when it is selected. */
  readonly construction: readonly ViewShape[];
}

export interface Edge {
  /** s of the file's own time. */
  readonly time: number;
  /** °C; NaN is written as null. */
  readonly temperature: number | null;
  /** Unit in which the text writes it. */
  readonly unit: '°C' | 'min';
  /** The value in that unit, as the text or the rule gives it. */
  readonly value: number;
  /** Decimals the text has. */
  readonly decimals: number;
  /** `own` text, the `method`'s, or found by a `rule` (around): what a drag would do. */
  readonly source: 'own' | 'method' | 'rule';
  /** Token of the number, where it is written. */
  readonly token: 'window.from' | 'window.to' | 'window.at' | 'window.within';
}

export type ViewShape =
  | {
      readonly shape: 'line';
      readonly lane: string;
      readonly role: 'level' | 'tangent' | 'baseline';
      readonly points: readonly ViewPoint[];
    }
  | {
      readonly shape: 'mark';
      readonly lane: string;
      readonly quantity: string;
      readonly text: string;
      readonly at: ViewPoint;
    }
  | {
      readonly shape: 'area';
      readonly lane: string;
      readonly from: ViewPoint;
      readonly to: ViewPoint;
      readonly baseline: readonly ViewPoint[];
    };

export interface ViewPoint {
  readonly time: number;
  readonly temperature: number | null;
  /** In the unit of the lane. */
  readonly y: number;
}

export interface Ledger {
  readonly columns: readonly { readonly id: string; readonly title: string; readonly align: 'left' | 'right' }[];
  readonly rows: readonly LedgerRow[];
}

export interface LedgerRow {
  /** Result id `First.loss`, or `require NAME`. */
  readonly id: string;
  readonly statement: string;
  readonly name: string;
  readonly kind: string;
  readonly quantity: string;
  /** As hover, hint and command line print it. */
  readonly value: string;
  /** For sorting and for copying at full precision; null where there is none. */
  readonly number: number | null;
  readonly unit: string;
  readonly basis: string;
  readonly state: string;
  /** Difference to the committed revision, in words; empty where not compared. */
  readonly since: string;
  readonly sinceMoved: boolean;
  /** `met (60..65 %)`, `not met`, findings' codes. */
  readonly limit: string;
  readonly verdict: 'met' | 'not met' | 'inconclusive' | 'not evaluated' | null;
  readonly severity: 'error' | 'warning' | 'note' | null;
  readonly main: boolean;
  /** Definition, method, window, contributions, edge sensitivity: what the opened row shows, as label and text. */
  readonly details: readonly { readonly label: string; readonly text: string }[];
}

export interface ViewFinding {
  readonly code: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly message: string;
  readonly uri: string;
  readonly span: Span;
  readonly line: number;
  readonly statement: string | null;
}

/** Asks for the samples of curves in a visible range. */
export interface SamplesRequest {
  readonly generation: Generation;
  readonly curves: readonly string[];
  readonly abscissa: Abscissa;
  readonly from: number;
  readonly to: number;
  /** Pixel columns between `from` and `to`. */
  readonly pixels: number;
}

/** Little-endian Float64 pairs in base64, ascending in the abscissa: original samples, at most four a pixel column. */
export interface SamplesAnswer {
  readonly generation: Generation;
  readonly curves: readonly {
    readonly id: string;
    readonly x: string;
    readonly y: string;
    readonly count: number;
    /** True: every sample of the range is in it. */
    readonly complete: boolean;
  }[];
}

/** All signals at one point, for the cursor. */
export interface CursorRequest {
  readonly generation: Generation;
  readonly abscissa: Abscissa;
  readonly at: number;
  /** The part the cursor is on; null: the first that holds the point. */
  readonly part: string | null;
  /** Samples to walk from there along the data (arrow keys); 0: the nearest. */
  readonly step: number;
}

export interface CursorAnswer {
  readonly generation: Generation;
  readonly time: number;
  readonly temperature: number | null;
  readonly part: string;
  /** As printed: `T 652.3 °C`, `m 93.41 %`. */
  readonly values: readonly {
    readonly lane: string;
    readonly label: string;
    readonly text: string;
    readonly y: number;
  }[];
  /** One sentence for the screen reader. */
  readonly spoken: string;
}

/** A moved edge, before release (preview) and on release (edit). */
export interface EdgeRequest {
  readonly generation: Generation;
  readonly statement: string;
  readonly edge: 'from' | 'to';
  /** s of the file's own time. */
  readonly time: number;
  /** Resolution of the pointer in the edge's unit per pixel; null: a typed value or a key step. */
  readonly perPixel: number | null;
  /** The value as typed, in the edge's unit; null: from `time`. */
  readonly typed: number | null;
  /** For an edge of the method: an override in the run's gloss (default), or the method itself. */
  readonly into: 'gloss' | 'method';
}

export interface EdgePreview {
  readonly generation: Generation;
  /** The text that would be written for the number: `652.3`. */
  readonly written: string;
  readonly rows: readonly { readonly id: string; readonly value: string; readonly number: number | null }[];
}

export type EdgeEdit =
  | {
      readonly ok: true;
      readonly uri: string;
      readonly version: number | null;
      readonly edits: readonly { readonly span: Span; readonly range: TextRange; readonly text: string }[];
      readonly label: string;
      /** Of an edit of the method: how many glosses name it. */
      readonly touches: number;
      /** Where the caret should go (the empty reason); null: leave it. */
      readonly caret: TextRange | null;
    }
  | { readonly ok: false; readonly reason: string };

export interface TextRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}
