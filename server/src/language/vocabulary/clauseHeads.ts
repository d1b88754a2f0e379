import { everywhere } from './clauses';
import { statements } from './statements';

/** Evaluations are whole in one line and written one below the other: a line that begins in the wrong column breaks. */
const oneLine = ['step', 'peak', 'glass', 'onset', 'crossing', 'residue'];

/**
 * Keywords below which clauses usually follow: statements with two clauses or more of their own that say little in one
 * line, and `override`, which needs its reason. Below the others the next line is as a rule another statement.
 */
export const clauseHeads: readonly string[] = [
  ...new Set(
    statements
      .filter((record) => record.clauses.filter((clause) => !everywhere.includes(clause)).length > 1)
      .map((record) => record.keyword)
      .filter((keyword) => !oneLine.includes(keyword)),
  ),
  'override',
];

const head = new RegExp(`^(?:${clauseHeads.join('|')})(?![\\p{L}\\p{M}\\p{Nd}_])`, 'u');

/** Whether a line is a head below which clauses usually follow. */
export function opensClauses(line: string): boolean {
  return head.test(line);
}
