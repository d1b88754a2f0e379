import type { Span } from '../../base/span';
import { normalName } from '../../language/syntax/characters';
import { splitLines, type SourceLine } from '../../language/syntax/lines';
import type { StatementNode, Tree } from '../../language/tree';
import { functionRecord } from '../../language/vocabulary/functions';
import { clauseOf, isKeyword, statements } from '../../language/vocabulary/statements';
import { lineTokens, type LineToken } from '../lineTokens';
import type { TokenModifier, TokenType } from './legend';

/** A stretch of one line with what it is. */
export interface Classified {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

/** Words that join the parts of a line, as the forms of the vocabulary have them. */
const connecting = new Set(
  statements
    .flatMap((record) => [record.form, ...record.clauses.map((clause) => clause.form)])
    .flatMap((form) =>
      form
        .replace(/[[\]{}]/g, ' ')
        .split(' ')
        .slice(1),
    )
    .filter((word) => /^[a-z]+$/.test(word))
    .concat(['around', 'within']),
);

/** The tokens of a text, line by line; `failed`: names whose statements are not computed. */
export function classify(
  tree: Tree,
  failed: ReadonlySet<string>,
  within: Span = { start: 0, end: Infinity },
): Classified[] {
  const { text } = tree;
  const found: Classified[] = [];
  let next = 0;
  for (const line of splitLines(text)) {
    while (next < tree.statements.length && tree.statements[next]!.span.start < line.next) next += 1;
    if (line.next <= within.start || line.start > within.end) continue;
    const node = line.kind === 'head' || line.kind === 'clause' ? (tree.statements[next - 1] ?? null) : null;
    if (line.first < line.end && line.kind !== 'comment') found.push(...ofLine(text, line, node, failed));
    if (line.comment !== null && line.comment < line.lineEnd) {
      found.push({ span: { start: line.comment, end: line.lineEnd }, type: 'comment', modifiers: [] });
    }
  }
  return found;
}

function ofLine(text: string, line: SourceLine, node: StatementNode | null, failed: ReadonlySet<string>): Classified[] {
  const places =
    node === null ? [] : [...node.tokens].filter(([, span]) => span.start >= line.start && span.end <= line.lineEnd);
  const tokens = lineTokens(text, line.first, line.end);
  const found = tokens.flatMap((token, i): Classified[] => {
    if (token.kind === 'formula' || token.kind === 'open formula') return formula(token);
    const named = ofPlaces(token, places, node, failed);
    if (named !== null) return [{ span: token.span, ...named }];
    const type = lexical(token, i, tokens, line);
    return type === null ? [] : [{ span: token.span, type, modifiers: type === 'function' ? ['defaultLibrary'] : [] }];
  });
  return joined(found);
}

/** A code is one token, whatever its hyphens. */
function joined(tokens: readonly Classified[]): Classified[] {
  const result: Classified[] = [];
  for (const token of tokens) {
    const last = result.at(-1);
    if (last?.type === 'decorator' && token.type === 'decorator' && last.span.end === token.span.start) {
      result[result.length - 1] = { ...last, span: { start: last.span.start, end: token.span.end } };
    } else result.push(token);
  }
  return result;
}

/** What the tree calls the place a token lies in. */
function ofPlaces(
  token: LineToken,
  places: readonly (readonly [string, Span])[],
  node: StatementNode | null,
  failed: ReadonlySet<string>,
): Omit<Classified, 'span'> | null {
  const around = places
    .filter(([, span]) => span.start <= token.span.start && token.span.end <= span.end)
    .sort(([, a], [, b]) => a.end - a.start - (b.end - b.start));
  for (const [place, span] of around) {
    if (place === 'keyword') return { type: 'keyword', modifiers: [] };
    if (place === 'name') return { type: 'variable', modifiers: definition(node, failed) };
    if (
      /(?:^|\.)name(?:#\d+)?$|^sum\/\d+$/.test(place) ||
      (place === 'on' && span.start === token.span.start && span.end === token.span.end)
    ) {
      return { type: 'variable', modifiers: failed.has(normalName(token.text)) ? ['deprecated'] : [] };
    }
    if (place.endsWith('.quantity')) return { type: 'property', modifiers: [] };
    if (place === 'code' || place.endsWith('.code')) return { type: 'decorator', modifiers: [] };
    if (place === 'unit' || place.endsWith('.unit') || place === 'show.value') return { type: 'type', modifiers: [] };
    if (place === 'segment' || place.endsWith('.segment'))
      return token.kind === 'word' ? { type: 'enumMember', modifiers: [] } : null;
    if (place === 'signal' || place.endsWith('.signal'))
      return token.kind === 'word' ? { type: 'enumMember', modifiers: [] } : null;
    if (token.kind === 'word' && isChosen(place, node)) return { type: 'enumMember', modifiers: [] };
    // The line of a clause begins with its word.
    if (span.start === token.span.start && token.kind === 'word' && !place.includes('.') && isClause(place)) {
      return { type: 'property', modifiers: [] };
    }
  }
  return null;
}

/** The value of a clause that is one of a few words: a choice, a signal, a basis. */
function isChosen(place: string, node: StatementNode | null): boolean {
  const word = /^(\w+)(?:#\d+)?\.value$/.exec(place)?.[1];
  const record = statements.find((s) => s.kind === node?.statement?.kind);
  const clause = word === undefined || record === undefined ? null : clauseOf(record, word);
  return clause !== null && chosen.has(clause.argument.form);
}

const chosen: ReadonlySet<string> = new Set([
  'choice',
  'signal',
  'signals',
  'basis',
  'encoding',
  'text or none',
  'amount or none',
]);

function isClause(place: string): boolean {
  return (
    !/^(?:head|expression|limit|window|at|level|file|title|text|because|sum|on)(?:$|\/)/.test(place) ||
    place === 'because'
  );
}

function definition(node: StatementNode | null, failed: ReadonlySet<string>): readonly TokenModifier[] {
  const gone = node !== null && (node.broken || (node.name !== null && failed.has(node.name)));
  return gone ? ['definition', 'deprecated'] : ['definition'];
}

/** What a token is by its looks and its neighbours. */
function lexical(token: LineToken, index: number, tokens: readonly LineToken[], line: SourceLine): TokenType | null {
  switch (token.kind) {
    case 'number':
    case 'date':
      return 'number';
    case 'unit':
      return 'type';
    case 'text':
    case 'open text':
      return 'string';
    case 'sign':
      return /^(?:[-+*/^=±\u2212≤≥]|<=|>=|\+\/-|\.\.)$/.test(token.text) ? 'operator' : null;
    default:
  }
  const word = normalName(token.text);
  if (index === 0) return line.kind === 'head' ? (isKeyword(word) || word === 'language' ? 'keyword' : null) : null;
  if (functionRecord(word) !== null && tokens[index + 1]?.text === '(') return 'function';
  return connecting.has(word) ? 'keyword' : null;
}

/** `M(CaCO3)`: the letter as a function, the formula as one value. */
function formula({ span, kind }: LineToken): Classified[] {
  const end = kind === 'formula' ? span.end - 1 : span.end;
  const inner = { start: span.start + 2, end };
  return [
    { span: { start: span.start, end: span.start + 1 }, type: 'function', modifiers: ['defaultLibrary'] },
    ...(inner.end > inner.start ? [{ span: inner, type: 'enumMember' as const, modifiers: [] }] : []),
  ];
}
