import type { Span } from '../../base/span';
import { nearest } from '../nearest';
import { because } from '../vocabulary/clauses';
import { isLaterWord } from '../vocabulary/later';
import type { ClauseRecord, StatementRecord } from '../vocabulary/record';
import { signalWords } from '../vocabulary/signals';
import { clauseOf, isKeyword, statements } from '../vocabulary/statements';
import { readArgument } from './clauseArguments';
import type { SourceLine } from './lines';
import { fix, replaceBy, type LineReader, type Read } from './reader';
import { readSignal } from './signals';
import type { OpenStatement } from './statement';
import { endOfLine } from './trailing';

/** Reads an indented line into the statement above it; gives the span of its word. */
export function readClauseLine(
  open: OpenStatement,
  record: StatementRecord,
  line: SourceLine,
  reader: LineReader,
): Span | null {
  const word = reader.peekName();
  const clause = word === null ? null : findClause(open, record, word);
  if (word === null || clause === null) {
    unknownClause(open, record, line, reader, word);
    return null;
  }
  const named = readClauseWord(reader, clause);
  if (named === null) {
    open.lose(word, reader.text.slice(line.first, line.end));
    return null;
  }
  const { key, times } = open.count(clause.choice ?? named.value);
  const token = clause.choice === undefined ? key : named.value;
  if (times > 1 && !clause.repeatable) {
    const whole = { start: line.start, end: line.next };
    reader.fail(
      'clause-twice',
      named.span,
      `\`${named.value}\` is there already${clause.choice === undefined ? '' : ' or excludes what is'}; the first counts and this one is ignored`,
      // It is ignored, so nothing changes without it.
      [fix('Remove this line', [{ span: whole, text: '' }], true)],
    );
    return null;
  }
  open.tokens.set(token, { start: line.first, end: line.end });
  if (!reader.atEnd()) open.tokens.set(`${token}.value`, { start: reader.at, end: line.end });
  readValue(open, clause, { word: named.value, token, times }, line, reader);
  return named.span;
}

function readValue(
  open: OpenStatement,
  clause: ClauseRecord,
  as: { readonly word: string; readonly token: string; readonly times: number },
  line: SourceLine,
  reader: LineReader,
): void {
  reader.prefix = as.token;
  const value = readArgument(reader, clause.argument, as.token);
  reader.prefix = '';
  endOfLine(reader);
  if (reader.problem === null && clause.argument.form === 'atmosphere') checkFrom(open, as, line, reader, value);
  if (reader.problem !== null) open.lose(as.word, reader.text.slice(line.first, line.end));
  else open.clauses.add(as.word, clause.argument.form, value as never);
}

/** The first atmosphere counts from the start; each further one says from when. */
function checkFrom(
  open: OpenStatement,
  as: { readonly token: string; readonly times: number },
  line: SourceLine,
  reader: LineReader,
  value: unknown,
): void {
  const from = (value as { readonly from: unknown } | null)?.from;
  if (as.times === 1 || from !== null) return;
  const span = open.tokens.get(`${as.token}.value`) ?? { start: line.first, end: line.end };
  reader.fail('unexpected-text', span, 'a further atmosphere says from when it flows: `from 20 min` or `from hold 1`');
}

function findClause(open: OpenStatement, record: StatementRecord, word: string): ClauseRecord | null {
  if (open.override && word === because.word) return because;
  return clauseOf(record, word);
}

/** The clause word; a column begins with its whole signal, `ion(18)`. */
function readClauseWord(reader: LineReader, clause: ClauseRecord): Read<string> | null {
  if (clause.argument.form !== 'column') return reader.name();
  return readSignal(
    reader,
    signalWords((signal) => signal.read),
  );
}

function unknownClause(
  open: OpenStatement,
  record: StatementRecord,
  line: SourceLine,
  reader: LineReader,
  word: string | null,
): void {
  const { span, value } = reader.found();
  if (word === null) {
    reader.fail('unknown-clause', span, `\`${value}\` begins no clause; a clause begins with a word such as \`note\``);
    return;
  }
  if (isKeyword(word)) {
    const indent = { start: line.start, end: line.first };
    reader.fail('unknown-clause', span, `\`${word}\` begins a statement and stands in the first column`, [
      fix('Remove the blanks before it', [{ span: indent, text: '' }]),
    ]);
    return;
  }
  const own = record.clauses.map((clause) => clause.word);
  const words = open.override ? [...own, because.word] : own;
  const meant = nearest(word, words)[0];
  const owners = statements.filter((other) => clauseOf(other, word) !== null).map((other) => other.keyword);
  const others = (word === because.word ? ['override', ...owners] : owners).map((owner) => `\`${owner}\``);
  if (meant === undefined && others.length === 0 && isLaterWord(word)) {
    reader.fail(
      'later-word',
      span,
      `\`${word}\` belongs to a later release of the language; nothing of it is computed`,
    );
    return;
  }
  const hint =
    word === 'rate' && record.kind === 'columns'
      ? '; the rate is derived from the mass and not read'
      : others.length > 0
        ? `; it is one of ${[...new Set(others)].join(', ')}`
        : meant !== undefined
          ? `; \`${meant}\` is one`
          : `; it has ${words.map((w) => `\`${w}\``).join(', ')}`;
  const fixes = meant === undefined ? [] : [replaceBy(span, meant)];
  reader.fail('unknown-clause', span, `\`${record.keyword}\` has no clause \`${word}\`${hint}`, fixes);
}
