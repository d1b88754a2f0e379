import type { FindingCode } from '../../findings/codes';
import type { BlankStatement, RunStatement, SignalName } from '../../language/model';
import type { Program } from '../../language/program';
import type { Segment, StoredUnit } from '../../runs/run';
import type { StatementOutcome } from '../outcome';
import type { PreparedRun } from '../preparedRun';
import type { RunFacts } from './scanRun';

/** What the checks look at: read only, and the same for every check. */
export interface CheckContext {
  readonly program: Program;
  readonly run: PreparedRun;
  /** `scanRun(run)`: what the columns show. Depends on the run alone; remember it with the run. */
  readonly facts: RunFacts;
  readonly blanks: readonly BlankRun[];
  readonly joins: readonly JoinedFile[];
  /** Every data file in use, with the identity of its text. */
  readonly files: readonly UsedFile[];
  /** Outcomes by name; empty for checks that look at the run alone. */
  readonly outcomes: ReadonlyMap<string, StatementOutcome>;
  /** The limit in force, in the unit of the record. */
  limit(code: FindingCode): number;
}

/** A blank as it was measured, its clock set to that of the run. */
export interface BlankRun {
  /** Id of the `blank` statement. */
  readonly id: string;
  readonly statement: BlankStatement;
  readonly display: string;
  readonly identity: string;
  /** The `run` statement of its own gloss; null where the blank is a bare data file. */
  readonly described: RunStatement | null;
  readonly segments: readonly Segment[];
  /** s, as matched to the run. */
  readonly time: Float64Array;
  /** °C; null where the file has none. */
  readonly temperature: Float64Array | null;
  readonly signals: ReadonlyMap<SignalName, BlankSignal>;
}

export interface BlankSignal {
  readonly unit: StoredUnit;
  readonly values: Float64Array;
}

export interface JoinedFile {
  readonly id: string;
  readonly display: string;
  /** Largest difference of the temperatures of both files at equal times, K; null where it cannot be told. */
  readonly temperatureDifference: number | null;
}

export interface UsedFile {
  /** Id of the statement that names it, and the token that holds the name. */
  readonly statement: string;
  readonly token: string;
  readonly display: string;
  readonly identity: string;
}
