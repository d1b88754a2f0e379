import type { Counters } from '../base/counters';
import type { EvaluationStatement } from '../language/model';
import type { Effective, Program } from '../language/program';
import type { FindingCode } from '../findings/codes';
import { evaluateCrossing } from './evaluators/crossing';
import { evaluateGlass } from './evaluators/glass';
import { evaluateOnset } from './evaluators/onset';
import { evaluatePeak } from './evaluators/peak';
import { evaluateResidue } from './evaluators/residue';
import { evaluateStep } from './evaluators/step';
import { remembered, type Memo } from './memo';
import type { StatementOutcome } from './outcome';
import type { PreparedRun } from './preparedRun';
import type { StatementContext } from './statementContext';

/** Raised when an evaluator changes its numbers: old memory must not answer for it. */
const evaluatorVersion = 1;

/**
 * Evaluates every evaluation statement of a program, each under a key of its own content and of what it reads, so that
 * a changed statement costs itself and its dependants.
 */
export function evaluateStatements(
  program: Program,
  run: PreparedRun,
  limit: (code: FindingCode) => number,
  memo: Memo,
  counters: Counters,
): Map<string, StatementOutcome> {
  const outcomes = new Map<string, StatementOutcome>();
  const keys = new Map<string, string>();
  const rules = program.rules.map((r) => r.canonical).sort();
  for (const effective of program.order) {
    if (effective.statement.kind === 'let') continue;
    const source = effective as Effective<EvaluationStatement>;
    const name = source.statement.name;
    const needs = source.needs.map((n) => keys.get(n) ?? `missing ${n}`);
    const key = JSON.stringify([evaluatorVersion, run.key, rules, source.canonical, source.id, source.file, needs]);
    keys.set(name, key);
    const context: StatementContext = {
      run,
      runStatement: program.run?.id ?? '',
      outcome: (of) => {
        const found = outcomes.get(of);
        return found === undefined || found.failure !== null ? null : found;
      },
      limit,
    };
    const outcome = remembered(memo, key, () => {
      counters.add('evaluations');
      return evaluateOne(context, source);
    });
    outcomes.set(name, outcome);
  }
  return outcomes;
}

function evaluateOne(context: StatementContext, source: Effective<EvaluationStatement>): StatementOutcome {
  if (source.failed !== null) {
    // Static checks told already.
    return {
      source,
      name: source.statement.name,
      failure: source.failed,
      placed: null,
      signal: null,
      quantities: [],
      method: '',
      findings: [],
      construction: null,
      masses: null,
      analysis: null,
    };
  }
  switch (source.statement.kind) {
    case 'step':
      return evaluateStep(context, { ...source, statement: source.statement });
    case 'peak':
      return evaluatePeak(context, { ...source, statement: source.statement });
    case 'glass':
      return evaluateGlass(context, { ...source, statement: source.statement });
    case 'onset':
      return evaluateOnset(context, { ...source, statement: source.statement });
    case 'crossing':
      return evaluateCrossing(context, { ...source, statement: source.statement });
    case 'residue':
      return evaluateResidue(context, { ...source, statement: source.statement });
  }
}
