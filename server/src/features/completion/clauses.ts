import { because } from '../../language/vocabulary/clauses';
import { bases } from '../../language/vocabulary/bases';
import type { Argument, ClauseRecord, StatementRecord } from '../../language/vocabulary/record';
import { signalRecord, signalWords } from '../../language/vocabulary/signals';
import { encodings } from '../../language/vocabulary/statements/reading';
import { clauseOf } from '../../language/vocabulary/statements';
import { normalName } from '../../language/syntax/characters';
import { writeText } from '../../language/writing/writeText';
import { parseUnit } from '../../quantities/parseUnit';
import { clausesOf } from '../clauses';
import type { LineToken } from '../lineTokens';
import { allowedCodes, codeSpan, reasonOffer } from './codes';
import { from, isSign, isWord, type CompletionContext } from './context';
import { formSnippet } from './formSnippet';
import { signalOffers, word } from './heads';
import { columnOffers } from './columns';
import { atmosphereOffers, crucibleOffers, sinceComma, specimenOffers } from './material';
import { value, type Offer } from './offer';
import { namesOfKinds } from './places';
import { allUnits, plainUnit, unitOffers, unitsOf } from './units';

/** The clauses a statement may still have: none that stands there and may not stand twice, one of a choice. */
export function clauseWordOffers({ document, cursor }: CompletionContext, record: StatementRecord): Offer[] {
  const { tree } = document;
  const there = new Set(
    (cursor.owner === null ? [] : clausesOf(tree, cursor.owner))
      .filter(({ span }) => span.end < cursor.line.start || span.start > cursor.line.lineEnd)
      .map((c) => c.word),
  );
  const chosen = new Set(
    record.clauses.filter((c) => there.has(c.word)).flatMap((c) => (c.choice === undefined ? [] : [c.choice])),
  );
  const free = (c: ClauseRecord): boolean =>
    c.repeatable || (!there.has(c.word) && (c.choice === undefined || !chosen.has(c.choice)));
  const clauses = [...(cursor.override ? [because] : []), ...record.clauses].filter(free);
  const alone = cursor.rest.trim() === '';
  return clauses.map((clause) => ({
    label: clause.word,
    kind: 'clause',
    detail: clause.form,
    ...(alone && clause.argument.form !== 'nothing'
      ? { insert: `${clause.word} `, snippet: clauseSnippet(clause) }
      : {}),
    doc: { of: 'clause', kind: record.kind, word: clause.word },
  }));
}

/** Texts and single choices with their place; where more than that is offered, only the word, so that it is offered. */
function clauseSnippet(clause: ClauseRecord): string {
  const { form } = clause.argument;
  if (form === 'text' || form === 'allow') return formSnippet(clause.form);
  return signalRecord(clause.word)?.channel === true && form === 'column'
    ? `${clause.word}(\${1:N}) `
    : `${clause.word} `;
}

/** What may come next behind a clause word. `args`: what is written there. */
export async function clauseValueOffers(
  context: CompletionContext,
  record: StatementRecord,
  tokens: readonly LineToken[],
): Promise<Offer[]> {
  const name = normalName(tokens[0]!.text);
  const clause = context.cursor.override && name === because.word ? because : clauseOf(record, name);
  if (clause === null) return [];
  const channel = clause.argument.form === 'column' && isSign(tokens[1], '(') ? 4 : 1;
  return valueOffers(context, clause, clause.argument, tokens.slice(channel));
}

async function valueOffers(
  context: CompletionContext,
  clause: ClauseRecord,
  argument: Argument,
  args: readonly LineToken[],
): Promise<Offer[]> {
  const { cursor, document } = context;
  const { text } = document.tree;
  const last = args.at(-1);
  const units = (of: readonly string[]): Offer[] => unitOffers(cursor, text, of);
  switch (argument.form) {
    case 'text':
      return args.length === 0 ? asDetected(context, clause.word) : [];
    case 'text or none':
      return args.length === 0 && cursor.quoted === null ? [value('none', 'an empty crucible')] : [];
    case 'choice':
      return argument.of
        .filter((choice) => args.every((t, i) => choice.split(' ')[i] === t.text))
        .map((choice) => ({ label: choice, kind: 'choice', replace: from(cursor, args[0]) }));
    case 'amount':
    case 'amount or none': {
      const measures = [...argument.measures, ...(argument.inHold ?? [])];
      if (last?.kind === 'number') return units(unitsOf(measures));
      if (args.length > 0) return [];
      const none = argument.form === 'amount or none' ? [value('none')] : [];
      return [...none, ...usualValue(clause)];
    }
    case 'words':
      return specimenOffers(context, sinceComma(args));
    case 'crucible':
      return crucibleOffers(context, args, units);
    case 'atmosphere':
      return atmosphereOffers(context, args, units);
    case 'calibrated':
      if (args.length === 0) return signalOffers(signalWords((s) => s.read));
      if (last?.kind === 'number') return units(unitsOf(calibratedMeasures(args)));
      return last?.kind === 'unit' && !args.some((t) => isWord(t, 'u')) ? [word('u', 'its standard uncertainty')] : [];
    case 'signal':
      return args.length === 0 ? signalOffers(argument.of) : [];
    case 'signals':
      return sinceComma(args).length === 0
        ? signalOffers(argument.of.filter((s) => !args.some((t) => t.text === s)))
        : [];
    case 'count':
      return last?.kind === 'number' && argument.unit !== null ? [value(argument.unit)] : [];
    case 'encoding':
      return args.length === 0 ? encodings.map((e) => ({ ...value(e), replace: codeSpan(context) })) : [];
    case 'name':
      return args.length === 0 ? namesOfKinds(context, null) : [];
    case 'names':
      return sinceComma(args).length === 0 ? enclosed(context, args) : [];
    case 'basis':
      return basis(context, args);
    case 'unit':
      return args.length === 0 ? units(shownUnits(context)) : [];
    case 'allow': {
      const code = codeSpan(context);
      if (args.every((t) => t.span.end > code.start)) return allowedCodes(context, 'because ""');
      return args.some((t) => isWord(t, 'because')) ? [] : [reasonOffer()];
    }
    case 'column':
      return columnOffers(context, clause, args, units);
    case 'ramp':
      if (last?.kind === 'number') {
        return units(unitsOf(args.some((t) => isWord(t, 'at')) ? ['heating rate'] : ['temperature']));
      }
      if (last !== undefined && last.kind !== 'unit') return [];
      return args.some((t) => isWord(t, 'to')) ? (last === undefined ? [] : [word('at')]) : [word('to')];
    case 'hold':
      return last?.kind === 'number' ? units(unitsOf(['time'])) : [];
    case 'nothing':
    case 'date':
      return [];
  }
}

/** The value that counts where the clause is not written, to begin from. */
function usualValue({ default: normal }: ClauseRecord): Offer[] {
  const amount = /^\d+(?:\.\d+)? [^\s;,]+/.exec(normal ?? '');
  return amount === null ? [] : [value(amount[0], 'as it is where nothing is written')];
}

/** `delimiter` and `decimal` as they were found in the file. */
function asDetected({ results, cursor }: CompletionContext, clause: string): Offer[] {
  const read = results?.snapshot.run?.interpretation;
  if (read === undefined || cursor.quoted !== null) return [];
  const found = clause === 'delimiter' ? (read.delimiter ?? ' ') : clause === 'decimal' ? read.decimal : null;
  return found === null ? [] : [value(writeText(found), 'as the file was read')];
}

/** What a scale is checked over: temperatures, or the unit of the signal; its uncertainty also in %. */
function calibratedMeasures(args: readonly LineToken[]): Parameters<typeof unitsOf>[0] {
  const own = signalRecord(args[0]!.text)?.measures ?? [];
  if (!args.some((t) => isWord(t, 'u'))) return ['temperature', ...own];
  return [...own.map((m) => (m === 'temperature' ? ('difference' as const) : m)), 'fraction'];
}

/** Statements of the same kind that are not named yet. */
function enclosed(context: CompletionContext, args: readonly LineToken[]): Offer[] {
  const kind = context.cursor.record?.kind ?? '';
  return namesOfKinds(context, [kind]).filter(({ label }) => !args.some((t) => t.text === label));
}

function basis(context: CompletionContext, args: readonly LineToken[]): Offer[] {
  const written = args.map((t) => t.text).join(' ');
  const named = bases.find((b) => b.names !== null && b.words === written);
  if (named !== undefined) return namesOfKinds(context, [named.names!]);
  return bases
    .filter((b) => b.words.startsWith(written))
    .map((b) => ({
      label: b.words,
      kind: 'choice',
      replace: from(context.cursor, args[0]),
      insert: b.names === null ? b.words : `${b.words} `,
      doc: { of: 'basis', name: b.of },
    }));
}

/** Units of the dimension that the value has, where that is known; else all. */
function shownUnits({ results, cursor }: CompletionContext): readonly string[] {
  const result = results?.snapshot.results.find((r) => r.id === cursor.owner?.name);
  if (result === undefined) return allUnits;
  const same = allUnits.filter((unit) => unit !== result.unit.text && sameKind(unit, result.unit.dimension));
  return [result.unit.text, ...same].filter((unit) => unit !== plainUnit);
}

function sameKind(unit: string, dimension: readonly number[]): boolean {
  const parsed = parseUnit(unit);
  return parsed.ok && parsed.value.dimension.every((e, i) => e === dimension[i]);
}
