import { functions, molarMassRecord } from '../../language/vocabulary/functions';
import { quantities, type EvaluationKind } from '../../language/vocabulary/quantities';
import { shownValue, stateAndReasons } from '../../presentation/shown';
import { atomicWeights } from '../../reference/atomicWeights';
import { gases } from '../../reference/gases';
import { specimens } from '../../reference/specimens';
import { molarMass } from '../../quantities/molarMass';
import { normalName } from '../../language/syntax/characters';
import type { LineToken } from '../lineTokens';
import { isSign, knownNames, type CompletionContext } from './context';
import type { Offer } from './offer';
import { allUnits, unitOffers } from './units';

/** What may come next in an expression of which these tokens are written; null where an operand is complete. */
export function expressionOffers(context: CompletionContext, tokens: readonly LineToken[]): Offer[] | null {
  const { cursor, document } = context;
  if (cursor.formula !== null) return formulaOffers(context);
  const last = tokens.at(-1);
  if (isSign(last, '.') && tokens.at(-2)?.kind === 'word') {
    return quantityOffers(context, normalName(tokens.at(-2)!.text));
  }
  if (last?.kind === 'number') return unitOffers(cursor, document.tree.text, allUnits);
  if (!operandDue(last)) return null;
  return [...nameOffers(context), ...functionOffers(cursor.rest.startsWith('('))];
}

/** An operator, an opening bracket, a comma or nothing: a value comes next. */
function operandDue(last: LineToken | undefined): boolean {
  return last === undefined || (last.kind === 'sign' && !['.', ')'].includes(last.text)) || last.kind === 'open text';
}

function nameOffers(context: CompletionContext): Offer[] {
  const own = context.cursor.owner?.name ?? null;
  return knownNames(context.document)
    .filter(({ name, kind }) => name !== own && (kind in quantities || kind === 'let' || kind === 'given'))
    .map(({ name, kind, file }) => {
      const value = context.results?.snapshot.results.find((r) => r.id === name);
      const where = file === 'method' ? `${kind} of the method` : kind;
      return {
        label: name,
        kind: 'name',
        detail: value === undefined ? where : shownValue(value),
        ...(kind in quantities ? { commit: ['.'] } : {}),
      };
    });
}

/** The quantities of one statement, with what they came to. */
export function quantityOffers(context: CompletionContext, name: string): Offer[] {
  const kind = knownNames(context.document).find((n) => n.name === name)?.kind ?? '';
  if (!(kind in quantities)) return [];
  const results = context.results?.snapshot.results.filter((r) => r.name === name) ?? [];
  return quantities[kind as EvaluationKind].map((record) => {
    const result = results.find((r) => r.quantity === record.name);
    const state = result === undefined ? '' : stateAndReasons(result);
    const value =
      result === undefined
        ? record.unit === '1'
          ? 'a number'
          : `in ${record.unit}`
        : `${shownValue(result)}${result.value === null || state === '' ? '' : `, ${state}`}`;
    return {
      label: record.name,
      kind: 'quantity',
      detail: value,
      doc: { of: 'quantity', kind, name: record.name },
    };
  });
}

function functionOffers(opened: boolean): Offer[] {
  return [...functions, molarMassRecord].map((record) => ({
    label: record.name,
    kind: 'function',
    detail: record.form,
    insert: opened ? record.name : `${record.name}(`,
    ...(opened ? {} : { snippet: `${record.name}($1)` }),
    doc: { of: 'function', name: record.name },
  }));
}

/** Formulas of substances the tables know, with their names; those of the gloss's own specimen first. */
function formulaOffers({ cursor, document }: CompletionContext): Offer[] {
  const contains = document.program.run?.statement.contains ?? [];
  const close = cursor.rest.startsWith(')') ? '' : ')';
  const named = [...specimens, ...gases].flatMap(({ name, aliases, formulas }) =>
    formulas.map((formula) => ({
      formula,
      name,
      first: contains.some(
        (words) => words === name || aliases.includes(words.toLowerCase()) || formulas.includes(words),
      ),
    })),
  );
  const seen = new Set<string>();
  return named
    .filter(({ formula }) => !seen.has(formula) && seen.add(formula) !== null && molarMass(formula, atomicWeights).ok)
    .sort((a, b) => Number(b.first) - Number(a.first))
    .map(({ formula, name }) => ({
      label: formula,
      kind: 'formula',
      detail: name,
      insert: `${formula}${close}`,
      // By formula or by name, whichever is typed.
      filter: `${formula} ${name}`,
      doc: { of: 'formula', name: formula },
    }));
}
