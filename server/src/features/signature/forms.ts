import { signalRecord } from '../../language/vocabulary/signals';
import type { ClauseRecord, StatementRecord } from '../../language/vocabulary/record';
import type { FunctionRecord } from '../../language/vocabulary/functions';
import type { Span } from '../../base/span';

/** A form of the grammar with the places in it that are filled in. */
export interface Form {
  readonly label: string;
  readonly parameters: readonly Parameter[];
}

export interface Parameter {
  /** Where it stands in the label. */
  readonly at: Span;
  readonly meaning: string | null;
}

/** `step NAME [= A + B] PLACE`: the parameters of the record, as they stand in its form. */
export function statementForm(record: StatementRecord): Form {
  let from = record.keyword.length;
  const parameters = record.parameters.map(({ name, meaning }) => {
    const found = record.form.indexOf(name, from);
    const start = found < 0 ? record.form.indexOf(name) : found;
    from = start + name.length;
    return { at: { start, end: from }, meaning };
  });
  return { label: record.form, parameters };
}

/** Clauses of several parts, one parameter each; others have one, all that stands behind the word. */
export function clauseForm(clause: ClauseRecord): Form {
  const { form, word } = clause;
  const start = Math.min(form.indexOf(' ') < 0 ? form.length : form.indexOf(' ') + 1, form.length);
  const of = (at: Span): Parameter => ({ at, meaning: null });
  const rest = { start, end: form.length };
  if (rest.start >= rest.end) return { label: form, parameters: [] };
  switch (clause.argument.form) {
    case 'column': {
      const bracket = form.indexOf(' [', start);
      return { label: form, parameters: [of({ start, end: bracket }), of({ start: bracket + 1, end: form.length })] };
    }
    case 'atmosphere':
    case 'crucible':
    case 'calibrated':
    case 'allow':
    case 'ramp':
      return { label: form, parameters: pieces(form, word.length).map(of) };
    default:
      return { label: form, parameters: [of(rest)] };
  }
}

/** Bracketed groups and words in capitals; connecting words are none. */
function pieces(form: string, from: number): Span[] {
  const found: Span[] = [];
  for (const match of form.slice(from).matchAll(/\[[^\]]*\]|\{[^}]*\}|\S+/g)) {
    if (!/[A-Z]/.test(match[0])) continue;
    const start = from + match.index;
    found.push({ start, end: start + match[0].length });
  }
  return found;
}

/** `mean(x, …)`. */
export function functionForm({ form }: Pick<FunctionRecord, 'form'>): Form {
  const open = form.indexOf('(') + 1;
  let start = open;
  const parameters = form
    .slice(open, -1)
    .split(', ')
    .map((text) => {
      const at = { start, end: start + text.length };
      start = at.end + 2;
      return { at, meaning: null };
    });
  return { label: form, parameters };
}

/** What a signal is followed by in a column clause begins behind its channel. */
export function isChannel(word: string): boolean {
  return signalRecord(word)?.channel === true;
}
