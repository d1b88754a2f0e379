import type { Statement } from '../model';
import { writeClauses } from './clauses';
import { writeHead } from './heads';

/**
 * The one text of a statement: head and clauses joined by line ends, one blank between tokens, literals in their
 * normal text, clauses sorted by word (repeated ones and the parts of a programme keep their order). Equal texts mean
 * equal statements.
 */
export function writeCanonical(statement: Statement): string {
  const clauses = writeClauses(statement, 'normal');
  if (statement.kind === 'programme') return [writeHead(statement, 'normal'), ...clauses].join('\n');
  const word = (clause: string): string => clause.split(' ')[0]!;
  const sorted = [...clauses].sort((a, b) => (word(a) < word(b) ? -1 : word(a) > word(b) ? 1 : 0));
  return [writeHead(statement, 'normal'), ...sorted].join('\n');
}
