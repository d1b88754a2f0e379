import type { Unit } from '../../quantities/unit';
import type {
  AllowClause,
  Amount,
  Atmosphere,
  Basis,
  ColumnChoice,
  Crucible,
  ProgrammeStatement,
  RunStatement,
  SignalName,
} from '../model';
import type { Argument } from '../vocabulary/record';

/** What each form of argument is read as. */
export interface ValueOf {
  readonly nothing: true;
  readonly text: string;
  readonly 'text or none': string | null;
  readonly choice: string;
  readonly amount: Amount;
  readonly 'amount or none': Amount | 'none';
  readonly words: readonly string[];
  readonly crucible: Crucible;
  readonly atmosphere: Atmosphere;
  readonly date: string;
  readonly calibrated: RunStatement['calibrated'][number];
  readonly signal: SignalName;
  readonly signals: readonly SignalName[];
  readonly count: number;
  readonly encoding: string;
  readonly name: string;
  readonly names: readonly string[];
  readonly basis: Basis;
  readonly unit: Unit;
  readonly allow: AllowClause;
  readonly column: ColumnChoice;
  readonly ramp: ProgrammeStatement['parts'][number];
  readonly hold: ProgrammeStatement['parts'][number];
}

export type Form = Argument['form'];

interface Entry {
  readonly word: string;
  readonly form: Form;
  readonly value: ValueOf[Form];
}

/** The clauses read under one head, in written order. */
export class Clauses {
  private readonly entries: Entry[] = [];

  add<F extends Form>(word: string, form: F, value: ValueOf[F]): void {
    this.entries.push({ word, form, value });
  }

  /** The first clause of this word, or null. */
  one<F extends Form>(word: string, form: F): ValueOf[F] | null {
    return this.all(word, form)[0] ?? null;
  }

  all<F extends Form>(word: string, form: F): readonly ValueOf[F][] {
    return this.ofForms([form]).flatMap((entry) => (entry.word === word ? [entry.value] : []));
  }

  /** All clauses of these forms, whatever their words, in written order. */
  ofForms<F extends Form>(forms: readonly F[]): readonly { readonly word: string; readonly value: ValueOf[F] }[] {
    return this.entries.flatMap((entry) =>
      // An entry is added with the value of its form.
      forms.some((form) => form === entry.form) ? [{ word: entry.word, value: entry.value as ValueOf[F] }] : [],
    );
  }

  has(word: string): boolean {
    return this.entries.some((entry) => entry.word === word);
  }

  choice<T extends string>(word: string, of: readonly T[]): T | null {
    const chosen = this.one(word, 'choice');
    return of.find((choice) => choice === chosen) ?? null;
  }

  /** Which of these words, that have no argument, stands there. */
  flag<T extends string>(of: readonly T[]): T | null {
    return of.find((word) => this.has(word)) ?? null;
  }

  texts(word: string): readonly string[] {
    return this.all(word, 'text');
  }
}
