import type { FindingCode } from '../findings/codes';
import type { PreparedRun } from './preparedRun';
import type { StatementOutcome } from './outcome';

/** What an evaluator may look at besides its own statement. */
export interface StatementContext {
  readonly run: PreparedRun;
  /** Id of the run statement, for fixes that add a clause to it. */
  readonly runStatement: string;
  /** Outcome of a statement that this one names; null where it failed or does not exist. */
  outcome(name: string): StatementOutcome | null;
  /** The limit in force for a finding, in the unit of its record. */
  limit(code: FindingCode): number;
}
