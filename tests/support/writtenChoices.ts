import type { SignalName } from '../../server/src/language/model';
import { detectAll, type ColumnDecision, type ReadingChoices } from '../../server/src/runs/reading/choices';

/** The choices that a proposed `columns` or `reading` statement stands for, as the evaluation would pass them on. */
export function writtenChoices(write: string, base: ReadingChoices = detectAll): ReadingChoices {
  const [head, ...clauses] = write.split('\n');
  if (/^columns( of "[^"]+")?$/.test(head)) return { ...base, columns: clauses.map(columnClause) };
  if (!/^reading( of "[^"]+")?$/.test(head)) throw new Error(`no statement of a gloss: ${head}`);
  return clauses.reduce((choices, clause) => ({ ...choices, ...readingClause(clause) }), base);
}

function columnClause(clause: string): ColumnDecision {
  const match = /^ {2}(\S+) column (\d+) in (\S+)$/.exec(clause);
  if (match === null) throw new Error(`no clause of columns: ${clause}`);
  return { signal: match[1] as SignalName, column: { number: Number(match[2]) }, unit: match[3] };
}

function readingClause(clause: string): Partial<ReadingChoices> {
  const match = /^ {2}(?:(delimiter|decimal) "(.+)"|block (\d+))$/.exec(clause);
  if (match === null) throw new Error(`no clause of reading: ${clause}`);
  return match[3] === undefined ? { [match[1]]: match[2].replace('\\t', '\t') } : { block: Number(match[3]) };
}
