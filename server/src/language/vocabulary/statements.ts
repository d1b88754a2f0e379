import { everywhere } from './clauses';
import type { ClauseRecord, OwnRecord, Role, StatementRecord } from './record';
import {
  crossingRecord,
  glassRecord,
  onsetRecord,
  peakRecord,
  residueRecord,
  stepRecord,
} from './statements/evaluations';
import {
  allowRecord,
  approvedRecord,
  letRecord,
  maskRecord,
  noteRecord,
  requireRecord,
  ruleRecord,
} from './statements/judgements';
import { givenRecord, methodTitleRecord, programmeRecord, useMethodRecord } from './statements/method';
import { columnsRecord, readingRecord } from './statements/reading';
import { blankRecord, joinRecord, runRecord } from './statements/run';

/** Every statement of the language, in the order pages show them. `note` and `allow` are clauses of all of them. */
export const statements: readonly StatementRecord[] = [
  runRecord,
  joinRecord,
  columnsRecord,
  readingRecord,
  blankRecord,
  methodTitleRecord,
  useMethodRecord,
  programmeRecord,
  givenRecord,
  stepRecord,
  peakRecord,
  glassRecord,
  onsetRecord,
  crossingRecord,
  residueRecord,
  letRecord,
  requireRecord,
  maskRecord,
  ruleRecord,
  allowRecord,
  noteRecord,
  approvedRecord,
].map(complete);

function complete(record: OwnRecord): StatementRecord {
  return { context: '', overridable: false, ...record, clauses: [...record.clauses, ...everywhere] };
}

const keywords = new Set(statements.map((record) => record.keyword));
const clauseWords = new Set(statements.flatMap((record) => record.clauses.map((clause) => clause.word)));

/** The statements a keyword may begin; two for `method`. */
export function recordsOf(keyword: string): readonly StatementRecord[] {
  return statements.filter((record) => record.keyword === keyword);
}

export function isKeyword(word: string): boolean {
  return keywords.has(word) || word === 'override';
}

/** A clause word of any statement. */
export function isClauseWord(word: string): boolean {
  return clauseWords.has(word);
}

export function clauseOf(record: StatementRecord, word: string): ClauseRecord | null {
  return record.clauses.find((clause) => clause.word === word) ?? null;
}

/** First words of lines in a gloss of this role, with `override` where it may stand. */
export function keywordsIn(role: Role): readonly string[] {
  const words = statements.filter((record) => record.roles.includes(role)).map((record) => record.keyword);
  return [...new Set(role === 'run' ? [...words, 'override'] : words)];
}
