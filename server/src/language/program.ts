import type { Finding, GlossRole } from '../findings/finding';
import type {
  AllowStatement,
  BlankStatement,
  ColumnsStatement,
  EvaluationStatement,
  JoinStatement,
  LetStatement,
  MaskStatement,
  ProgrammeStatement,
  ReadingStatement,
  RequireStatement,
  RuleStatement,
  RunStatement,
  AllowClause,
} from './model';

/**
 * A gloss with its method merged in and every name resolved: what the evaluation computes. Made by
 * `resolveProgram(gloss: Tree, method: Tree | null)`. Static findings (names, units, kinds, overrides) are in it; what
 * they break is marked failed, so that dependants fail silently.
 */
export interface Program {
  readonly run: Effective<RunStatement> | null;
  readonly joins: readonly Effective<JoinStatement>[];
  readonly columns: readonly Effective<ColumnsStatement>[];
  readonly readings: readonly Effective<ReadingStatement>[];
  readonly blanks: readonly Effective<BlankStatement>[];
  readonly programme: Effective<ProgrammeStatement> | null;
  readonly masks: readonly Effective<MaskStatement>[];
  readonly rules: readonly Effective<RuleStatement>[];
  readonly allows: readonly Effective<AllowStatement>[];
  readonly requires: readonly Effective<RequireStatement>[];
  /** Evaluations and lets in an order in which each comes after what it needs (by name where free, so that the order
   * of the text does not matter). Members of a cycle are in it, failed. */
  readonly order: readonly Effective<EvaluationStatement | LetStatement>[];
  readonly findings: readonly Finding[];
}

export interface Effective<S> {
  readonly statement: S;
  /** Id of the statement to show: the override's where one exists, else the statement's own. */
  readonly id: string;
  readonly file: GlossRole;
  /** Canonical text after merging: the content key of the statement. */
  readonly canonical: string;
  /** Names of statements it reads directly. */
  readonly needs: readonly string[];
  /** Code of the static finding that fails it; 'dependency' where it reads a failed name. */
  readonly failed: string | null;
  /** Set where an override took part: its reason. */
  readonly overridden: string | null;
  /** Allow clauses of the statement and of its override. */
  readonly allows: readonly AllowClause[];
}
