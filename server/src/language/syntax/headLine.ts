import type { Span } from '../../base/span';
import { nearest } from '../nearest';
import { isLaterWord } from '../vocabulary/later';
import type { StatementRecord } from '../vocabulary/record';
import { clauseOf, isClauseWord, isKeyword, keywordsIn, recordsOf, statements } from '../vocabulary/statements';
import { headReaders } from './heads';
import type { SourceLine } from './lines';
import type { TextParser } from './parse';
import { fix, replaceBy, type LineReader, type Read } from './reader';
import { OpenStatement } from './statement';
import { endOfLine } from './trailing';

/**
 * Reads a line that starts in the first column. `same statement`: it was a clause without its indent, and the
 * statement above goes on.
 */
export function readHeadLine(
  parser: TextParser,
  line: SourceLine,
  reader: LineReader,
  tokens: Map<string, Span>,
): OpenStatement | 'same statement' {
  const word = reader.name();
  tokens.set('head', { start: line.first, end: line.end });
  if (word === null) {
    const found = reader.found();
    reader.fail(
      'unknown-statement',
      found.span,
      `\`${found.value}\` begins no statement; a statement begins with a word such as \`step\``,
    );
    return lost(line, tokens);
  }
  tokens.set('keyword', word.span);
  if (!isKeyword(word.value)) return noKeyword(parser, line, reader, tokens, word);
  if (!parser.roleDecided) decideRole(parser, word);
  if (word.value === 'override') return readOverride(parser, line, reader, tokens, word);
  const record = recordFor(parser, reader, word);
  return record === null ? lost(line, tokens, word.value) : readHead(line, reader, tokens, record, false);
}

function decideRole(parser: TextParser, word: Read<string>): void {
  if (word.value === 'run' || word.value === 'method') {
    parser.role = word.value;
    parser.roleDecided = true;
  } else {
    parser.missRole(word.span);
  }
}

/** The record the keyword means in this gloss; null, with a failure, where it may not stand. */
function recordFor(parser: TextParser, reader: LineReader, word: Read<string>): StatementRecord | null {
  const role = parser.role ?? 'run';
  const records = recordsOf(word.value);
  // The first `method` of a method gloss is its title.
  const record = records.find((candidate) => candidate.roles.includes(role)) ?? null;
  if (record === null) {
    const message =
      role === 'method'
        ? `\`${word.value}\` stands in run glosses only; a method holds no data and is not changed by itself`
        : `\`${word.value}\` stands in methods only`;
    return reader.fail('unknown-statement', word.span, message);
  }
  if (!record.repeatable && parser.countKind(record.kind) > 1) {
    return reader.fail(
      'unexpected-text',
      word.span,
      `there is a \`${word.value}\` already; a gloss has one, and this one is ignored`,
    );
  }
  if (word.value === 'run' && parser.role === null) parser.role = 'run';
  return record;
}

function readOverride(
  parser: TextParser,
  line: SourceLine,
  reader: LineReader,
  tokens: Map<string, Span>,
  override: Read<string>,
): OpenStatement {
  if (parser.role === 'method') {
    reader.fail('unknown-statement', override.span, '`override` stands in run glosses only; change the method itself');
    return lost(line, tokens, 'override');
  }
  const keyword = reader.name();
  const record = keyword === null ? undefined : recordsOf(keyword.value).find((candidate) => candidate.overridable);
  if (keyword !== null && record !== undefined) {
    tokens.set('keyword', { start: override.span.start, end: keyword.span.end });
    return readHead(line, reader, tokens, record, true);
  }
  const possible = statements.filter((candidate) => candidate.overridable).map((candidate) => candidate.keyword);
  if (keyword !== null && isKeyword(keyword.value)) {
    const limit = keyword.value === 'require' || keyword.value === 'rule';
    reader.fail(
      limit ? 'override-of-nothing' : 'unexpected-text',
      keyword.span,
      limit
        ? `\`override\` changes evaluations and \`let\`, not limits: \`${keyword.value}\` stands as the method has it`
        : `\`${keyword.value}\` cannot be overridden`,
    );
  } else {
    const span = keyword?.span ?? reader.found().span;
    const meant = keyword === null ? [] : nearest(keyword.value, possible);
    reader.fail(
      'unexpected-text',
      span,
      `behind \`override\` stands one of ${possible.map((p) => `\`${p}\``).join(', ')}`,
      meant.map((text) => replaceBy(span, text)),
    );
  }
  return lost(line, tokens, 'override');
}

function readHead(
  line: SourceLine,
  reader: LineReader,
  tokens: Map<string, Span>,
  record: StatementRecord,
  override: boolean,
): OpenStatement {
  reader.identity = override ? `override ${record.keyword}` : record.keyword;
  const head = headReaders[record.kind](reader, override);
  if (head !== null) endOfLine(reader);
  const read = reader.problem === null ? head : null;
  const span = { start: line.first, end: line.end };
  const open = new OpenStatement(record, override, reader.identity, tokens, read, reader.defines, span);
  // `allow CODE on NAME` says in its head what could be a clause.
  if (tokens.has('on')) open.count('on');
  return open;
}

function noKeyword(
  parser: TextParser,
  line: SourceLine,
  reader: LineReader,
  tokens: Map<string, Span>,
  word: Read<string>,
): OpenStatement | 'same statement' {
  const { open } = parser;
  const indent = fix('Indent the line', [{ span: { start: line.start, end: line.start }, text: '  ' }]);
  const above = open === null || open.broken ? null : open.record;
  if (above !== null && clauseOf(above, word.value) !== null && !isLaterWord(word.value)) {
    const message = `\`${word.value}\` is a clause of the \`${above.keyword}\` above and is indented`;
    reader.fail('clause-not-indented', word.span, message, [indent]);
    return 'same statement';
  }
  if (isLaterWord(word.value)) {
    reader.fail(
      'later-word',
      word.span,
      `\`${word.value}\` belongs to a later release of the language; nothing of it is computed`,
    );
    return lost(line, tokens, word.value);
  }
  const role = parser.role ?? 'run';
  const meant = nearest(word.value, keywordsIn(role))[0];
  if (isClauseWord(word.value)) {
    const owners = statements.filter((record) => clauseOf(record, word.value) !== null).map((record) => record.keyword);
    const whose = [...new Set(word.value === 'because' ? ['override', ...owners] : owners)]
      .map((o) => `\`${o}\``)
      .join(', ');
    reader.fail(
      'clause-not-indented',
      word.span,
      `\`${word.value}\` is a clause of ${whose} and stands indented below it`,
    );
    return lost(line, tokens, word.value);
  }
  parser.doubtRole(word.value);
  const known = notBuilt[word.value];
  const message =
    known ?? `there is no statement \`${word.value}\`${meant === undefined ? '' : `; \`${meant}\` is one`}`;
  const fixes = known !== undefined || meant === undefined ? [] : [replaceBy(word.span, meant)];
  reader.fail('unknown-statement', word.span, message, fixes);
  return lost(line, tokens, word.value);
}

/** Words that people will try because other texts of the program mention them. */
const notBuilt: Readonly<Record<string, string>> = {
  language: '`language 1` can only be the very first line',
};

/** A head that nothing can be made of; the clauses below it are passed over. */
function lost(line: SourceLine, tokens: Map<string, Span>, word = '?'): OpenStatement {
  return new OpenStatement(null, false, word, tokens, null, null, { start: line.first, end: line.end });
}
