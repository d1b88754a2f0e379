import { limitText } from '../../findings/page';
import { isFindingCode, settableLimit } from '../../findings/table';
import { signalRecord, signals } from '../../language/vocabulary/signals';
import type { StatementRecord } from '../../language/vocabulary/record';
import type { LineToken } from '../lineTokens';
import { allowedCodes, codeSpan, reasonOffer, ruledCodes } from './codes';
import { isSign, isWord, lastIndex, type CompletionContext } from './context';
import { expressionOffers } from './expressions';
import { fileOffers, namedFiles } from './files';
import { overridable } from './keywords';
import type { Offer } from './offer';
import { namesOfKinds, placeOffers, segmentOffers } from './places';
import { allUnits, plainUnit, unitOffers, unitsOf } from './units';

/** What may come next on the first line of a statement, behind its keyword. `args`: what is written there. */
export async function headOffers(
  context: CompletionContext,
  record: StatementRecord,
  args: readonly LineToken[],
): Promise<Offer[]> {
  const { cursor, document } = context;
  const named = args.length > 0;
  switch (record.kind) {
    case 'run':
    case 'join':
      return named ? [] : fileOffers(context, 'data');
    case 'blank':
      return named ? [] : fileOffers(context, 'blank');
    case 'use method':
      return named ? [] : fileOffers(context, 'method');
    case 'columns':
    case 'reading':
      if (isWord(args[0], 'of')) return args.length > 1 ? [] : namedFiles(context);
      return named ? [] : [word('of', 'the file meant; without it the run and its blanks')];
    case 'given':
      if (isWord(args.at(-1), 'in') && args.length > 1)
        return [...units(context, allUnits), ...units(context, [plainUnit])];
      return args.length === 1 ? [word('in')] : [];
    case 'step':
    case 'peak':
    case 'glass':
    case 'onset':
      if (!named) return names(context, record);
      return isSign(args[1], '=')
        ? sum(context, record.kind, args.slice(2))
        : placeOffers(context, record.kind, args.slice(1));
    case 'crossing':
      return named ? crossing(context, args.slice(1)) : names(context, record);
    case 'residue':
      return named ? residue(context, args.slice(1)) : names(context, record);
    case 'let':
      if (!named) return names(context, record);
      return isSign(args[1], '=')
        ? (expressionOffers(context, args.slice(2)) ?? [])
        : args.length === 1
          ? [word('=')]
          : [];
    case 'require':
      return requirement(context, args);
    case 'allow':
      return allow(context, args);
    case 'rule':
      return rule(context, args);
    case 'mask':
      if (args.at(-1)?.kind === 'number')
        return unitOffers(cursor, document.tree.text, unitsOf(['temperature', 'time']));
      return args.at(-1)?.kind === 'unit' ? [reasonOffer()] : [];
    default:
      return [];
  }
}

/** Names are free; behind `override` they are those of the method. */
function names({ document, cursor }: CompletionContext, record: StatementRecord): Offer[] {
  if (!cursor.override) return [];
  return overridable(document)
    .filter(({ kind }) => kind === record.kind)
    .map(({ name }) => ({ label: name, kind: 'name', detail: `${record.kind} of the method` }));
}

async function sum(context: CompletionContext, kind: string, tokens: readonly LineToken[]): Promise<Offer[]> {
  const parts = lastIndex(tokens, (t) => isSign(t, '+'));
  if (tokens.length === 0 || parts === tokens.length - 1) return namesOfKinds(context, [kind]);
  const rest = tokens.slice(parts + 2);
  const more = rest.length === 0 ? [word('+', 'a further part')] : [];
  return parts < 0 ? more : [...more, ...(await placeOffers(context, kind, rest))];
}

async function crossing(context: CompletionContext, tokens: readonly LineToken[]): Promise<Offer[]> {
  const { cursor, document } = context;
  const equals = tokens.findIndex((t) => isSign(t, '='));
  if (equals < 0) return tokens.length === 0 ? signalOffers(signals.map((s) => s.word)) : [word('=')];
  const level = tokens.slice(equals + 1);
  const last = level.at(-1);
  const measured = signalRecord(tokens[0]?.text ?? '')?.measures ?? [];
  if (last === undefined) {
    return ['maximum', 'minimum'].map((end) => ({
      label: `10 % of ${end}`,
      kind: 'value',
      snippet: `\${1:10} % of ${end}`,
    }));
  }
  if (level.length === 1 && last.kind === 'number') {
    return unitOffers(cursor, document.tree.text, [...new Set([...unitsOf(measured), '%'])]);
  }
  if (isWord(last, 'of') && level[1]?.text === '%') return [word('maximum'), word('minimum')];
  const place = level.slice(isWord(level[2], 'of') ? 4 : 2);
  const share =
    level.length === 2 && level[1]?.text === '%' ? [word('of', 'a share of the largest or smallest value')] : [];
  return [...share, ...(level.length < 2 ? [] : await placeOffers(context, 'onset', place))];
}

async function residue(context: CompletionContext, tokens: readonly LineToken[]): Promise<Offer[]> {
  const { cursor, document } = context;
  const last = tokens.at(-1);
  const segment = segmentOffers(context, tokens);
  if (segment !== null) return segment;
  if (last === undefined) return [word('at')];
  if (isWord(last, 'at')) {
    return [{ label: 'end of', kind: 'keyword', insert: 'end of ', detail: 'where a segment ends' }];
  }
  if (isWord(last, 'end')) return [word('of')];
  if (last.kind === 'number') return unitOffers(cursor, document.tree.text, unitsOf(['temperature', 'time']));
  return last.kind === 'unit' ? [word('in', 'a segment of the run')] : [];
}

function requirement(context: CompletionContext, args: readonly LineToken[]): Offer[] {
  const { cursor, document } = context;
  if (args.some((t) => isWord(t, 'as'))) return [];
  const inRange = lastIndex(args, (t) => isWord(t, 'in'));
  if (inRange >= 0) {
    const last = args.at(-1);
    if (last?.kind === 'number') return unitOffers(cursor, document.tree.text, allUnits);
    return last?.kind === 'unit' && args.slice(inRange).some((t) => isSign(t, '..')) ? [asName()] : [];
  }
  const compared = lastIndex(args, (t) => isSign(t, '<=') || isSign(t, '>='));
  const offers = expressionOffers(context, args.slice(compared + 1));
  if (offers !== null) return offers;
  return compared >= 0 ? [asName()] : [word('in', 'closed limits'), word('<='), word('>=')];
}

function asName(): Offer {
  return word('as', 'what the requirement is called in reports');
}

function allow(context: CompletionContext, args: readonly LineToken[]): Offer[] {
  const code = codeSpan(context);
  const before = args.filter((t) => t.span.end <= code.start);
  if (before.length === 0) return allowedCodes(context, 'because ""');
  if (args.some((t) => isWord(t, 'because'))) return [];
  const on = lastIndex(args, (t) => isWord(t, 'on'));
  if (on === args.length - 1 && on >= 0) return namesOfKinds(context, null);
  return on >= 0 ? [reasonOffer()] : [word('on', 'the statement it is accepted on'), reasonOffer()];
}

function rule(context: CompletionContext, args: readonly LineToken[]): Offer[] {
  const { cursor, document } = context;
  const span = codeSpan(context);
  const before = args.filter((t) => t.span.end <= span.start);
  if (before.length === 0) return ruledCodes(context);
  if (args.some((t) => isWord(t, 'because'))) return [];
  // The code is cut at its hyphens.
  const amount = args.findIndex((t, i) => i > 0 && t.kind === 'number' && args[i - 1]!.span.end < t.span.start);
  const code = document.tree.text
    .slice(args[0]!.span.start, (args[amount] ?? { span: cursor.typed }).span.start)
    .trim();
  const limit = isFindingCode(code) ? settableLimit(code) : null;
  if (amount < 0) return limit === null ? [] : [{ label: limitText(limit), kind: 'value', detail: limit.meaning }];
  if (amount === args.length - 1 && limit !== null && limit.unit !== '')
    return unitOffers(cursor, document.tree.text, [limit.unit]);
  return [reasonOffer()];
}

export function word(text: string, detail?: string): Offer {
  return { label: text, kind: 'keyword', insert: `${text} `, ...(detail === undefined ? {} : { detail }) };
}

export function signalOffers(words: readonly string[]): Offer[] {
  return signals
    .filter((signal) => words.includes(signal.word))
    .map((signal) => ({
      label: signal.channel ? `${signal.word}( )` : signal.word,
      kind: 'value',
      ...(signal.channel ? { insert: `${signal.word}(`, snippet: `${signal.word}(\${1:N})`, filter: signal.word } : {}),
      doc: { of: 'signal', name: signal.word },
    }));
}

function units({ cursor, document }: CompletionContext, of: readonly string[]): Offer[] {
  return unitOffers(cursor, document.tree.text, of);
}
