import type { Statement } from '../model';
import { writeClauses } from './clauses';
import { writeHead } from './heads';

/** A statement as lines of a gloss, numbers as written, clauses indented by two blanks; `format` aligns them. */
export function writeStatement(statement: Statement): string {
  return [writeHead(statement, 'written'), ...writeClauses(statement, 'written').map((clause) => `  ${clause}`)].join(
    '\n',
  );
}
