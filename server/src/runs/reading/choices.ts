import type { SignalName } from '../../language/model';

/** What a person decided about reading one file. Everything left `null` is detected. */
export interface ReadingChoices {
  /** A run needs a temperature and something measured; a joined file may hold any signals. */
  readonly purpose: 'run' | 'joined';
  /** The file name to put into a proposed `columns of "FILE"`; null: the run itself, where none is needed. */
  readonly of: string | null;
  readonly delimiter: string | null;
  readonly decimal: string | null;
  /** Lines before the header, of the header, after the data. */
  readonly skip: number | null;
  readonly header: number | null;
  readonly footer: number | null;
  readonly encoding: string | null;
  /** Which of several runs side by side, from 1. */
  readonly block: number | null;
  readonly columns: readonly ColumnDecision[];
}

export interface ColumnDecision {
  readonly signal: SignalName;
  /** By header text, or by number from 1. */
  readonly column: { readonly header: string } | { readonly number: number };
  /** Normal spelling of the unit (`W/g`, `1` for a plain fraction); null: the header's. */
  readonly unit: string | null;
}

/** Nothing decided: all is detected. */
export const detectAll: ReadingChoices = {
  purpose: 'run',
  of: null,
  delimiter: null,
  decimal: null,
  skip: null,
  header: null,
  footer: null,
  encoding: null,
  block: null,
  columns: [],
};
