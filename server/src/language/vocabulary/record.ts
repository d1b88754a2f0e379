import type { Statement } from '../model';
import type { Measure } from './measures';

export type Role = 'run' | 'method';

/** What stands behind a clause word. The parser has one reader a form; completion and hover read the same. */
export type Argument =
  | { readonly form: 'nothing' }
  | { readonly form: 'text' }
  /** A text, or the word `none`. */
  | { readonly form: 'text or none' }
  | { readonly form: 'choice'; readonly of: readonly string[] }
  /** `inHold`: the measures that count where the statement stands in a hold. `uncertain`: may carry ±. */
  | {
      readonly form: 'amount';
      readonly measures: readonly Measure[];
      readonly inHold?: readonly Measure[];
      readonly uncertain?: true;
    }
  | { readonly form: 'amount or none'; readonly measures: readonly Measure[]; readonly inHold?: readonly Measure[] }
  | { readonly form: 'words' }
  | { readonly form: 'crucible' }
  | { readonly form: 'atmosphere' }
  | { readonly form: 'date' }
  | { readonly form: 'calibrated' }
  | { readonly form: 'signal'; readonly of: readonly string[] }
  | { readonly form: 'signals'; readonly of: readonly string[] }
  | { readonly form: 'count'; readonly unit: 'lines' | null }
  | { readonly form: 'encoding' }
  | { readonly form: 'name' }
  | { readonly form: 'names' }
  | { readonly form: 'basis' }
  | { readonly form: 'unit' }
  | { readonly form: 'allow' }
  | { readonly form: 'column' }
  | { readonly form: 'ramp' }
  | { readonly form: 'hold' };

export interface ClauseRecord {
  readonly word: string;
  /** As the grammar shows it: `span Q`. */
  readonly form: string;
  readonly argument: Argument;
  /** One or two sentences an analyst reads. */
  readonly prose: string;
  /** What counts where it is not written; null: nothing. */
  readonly default: string | null;
  /** A clause line, without its indent. */
  readonly example: string;
  readonly repeatable: boolean;
  /** Clauses of one choice, of which only one may stand. */
  readonly choice?: string;
}

export interface ParameterRecord {
  readonly name: string;
  readonly meaning: string;
  /** Where it is an amount or a range: what it measures. */
  readonly measures?: readonly Measure[];
}

export interface StatementRecord {
  readonly keyword: string;
  readonly kind: Statement['kind'];
  /** As the grammar shows it: `step NAME PLACE`. */
  readonly form: string;
  readonly parameters: readonly ParameterRecord[];
  readonly prose: string;
  /** The role of the glosses it may stand in. */
  readonly roles: readonly Role[];
  readonly repeatable: boolean;
  /** Whether `override` may stand before it. */
  readonly overridable: boolean;
  readonly clauses: readonly ClauseRecord[];
  /** Lines of a gloss, with clauses. */
  readonly example: string;
  /** What the example needs before it, behind the line of the role. */
  readonly context: string;
}

/** A record without what every statement has. */
export type OwnRecord = Omit<StatementRecord, 'context' | 'overridable'> &
  Partial<Pick<StatementRecord, 'context' | 'overridable'>>;
