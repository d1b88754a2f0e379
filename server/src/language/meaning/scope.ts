import type { EvaluationKind } from '../vocabulary/quantities';
import type { ValueType } from './valueType';

/** What a name stands for, as far as expressions must know. */
export type NameMeaning =
  /** A `let` or a `given`; null where its own definition failed. */
  | { readonly means: 'value'; readonly type: ValueType | null }
  | {
      readonly means: 'evaluation';
      readonly kind: EvaluationKind;
      /** Its quantities are in time only. */
      readonly inHold: boolean;
      /** The signal of a peak; null elsewhere. */
      readonly signal: string | null;
      readonly basis: string;
      /** It fails, and silently what reads it. */
      readonly failed: boolean;
    }
  | { readonly means: 'requirement' }
  /** It may be defined where nobody can look: in a method that could not be read. */
  | { readonly means: 'unknown' };

/** The names an expression can use. */
export interface Scope {
  lookup(name: string): NameMeaning | null;
  /** All names, for suggestions. */
  names(): Iterable<string>;
}
