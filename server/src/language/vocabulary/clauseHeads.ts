import { everywhere } from './clauses';
import { statements } from './statements';

/**
 * Keywords below which clauses usually follow: statements with two clauses or more of their own, and `override`, which
 * needs its reason. Below `let`, `require` or `note` the next line is as a rule another statement.
 */
export const clauseHeads: readonly string[] = [
  ...new Set(
    statements
      .filter((record) => record.clauses.filter((clause) => !everywhere.includes(clause)).length > 1)
      .map((record) => record.keyword),
  ),
  'override',
];

const head = new RegExp(`^(?:${clauseHeads.join('|')})(?![\\p{L}\\p{M}\\p{Nd}_])`, 'u');

/** Whether a line is a head below which clauses usually follow. */
export function opensClauses(line: string): boolean {
  return head.test(line);
}
