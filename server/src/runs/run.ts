import type { SignalName } from '../language/model';

/** Signals of a run in fixed units, whatever the file had. */
export type StoredUnit = 's' | '°C' | 'mg' | '1' | 'mW' | 'W/g' | 'µV' | 'µV/mg' | 'A' | '%/min';

export interface Column {
  readonly signal: SignalName;
  /** s, °C; mass in mg or 1 (a fraction); heat flow in mW, W/g, µV or µV/mg as exported, sign as exported. */
  readonly unit: StoredUnit;
  readonly values: Float64Array;
  /** Header text as found, empty where there is none. */
  readonly header: string;
  /** 1-based column number in the file. */
  readonly number: number;
}

/** How a file was read: reported by `new` and `--explain`. */
export interface Interpretation {
  readonly encoding: string;
  readonly bom: boolean;
  readonly lineEnds: string;
  /** `null`: runs of blanks. */
  readonly delimiter: string | null;
  readonly decimal: '.' | ',';
  /** Lines before the header. */
  readonly skip: number;
  /** Header lines (names, and units where they have a line of their own). */
  readonly header: number;
  /** Lines after the data. */
  readonly footer: number;
  readonly block: number | null;
  readonly columns: readonly {
    readonly number: number;
    readonly header: string;
    readonly unitText: string;
    readonly signal: SignalName | null;
  }[];
  readonly rows: number;
  /** Rows that left the regular path. */
  readonly irregularRows: number;
}

/** A cell that is not a number: skipped with its row's signal, counted, never zero. */
export interface BadCell {
  readonly line: number;
  readonly field: number;
  readonly text: string;
}

/** One file, read. Rows in file order; NaN marks a cell that held no number. */
export interface RawRun {
  readonly path: string;
  readonly identity: string;
  readonly interpretation: Interpretation;
  readonly columns: readonly Column[];
  readonly points: number;
  readonly badCells: { readonly count: number; readonly first: readonly BadCell[] };
  readonly emptyCells: number;
}

/** What could not be decided or read, with what to write. Turned into findings by `evaluation`. */
export type ReadingProblem =
  | { readonly problem: 'missing' | 'outside' | 'unreadable'; readonly message: string }
  | {
      readonly problem: 'column-unclear';
      readonly signal: SignalName | null;
      readonly message: string;
      /** The statement that would settle it: `columns\n  mass column 3 in mg`; null: one that is there must be changed. */
      readonly write: string | null;
    }
  | { readonly problem: 'no-numbers'; readonly message: string; readonly write: string | null };

export interface Segment {
  readonly direction: 'heating' | 'cooling' | 'hold';
  /** From 1, per direction in time. */
  readonly index: number;
  readonly name: string;
  /** Sample indices, inclusive first, exclusive last. */
  readonly first: number;
  readonly last: number;
  /** °C at both ends (fitted, not single readings). */
  readonly from: number;
  readonly to: number;
  /** s, the file's own time. */
  readonly start: number;
  readonly end: number;
  /** K/min from the data by least squares; null in a hold. */
  readonly rate: number | null;
}
