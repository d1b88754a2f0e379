import type { Counters } from '../base/counters';
import type { FindingCode } from '../findings/codes';
import type { Finding } from '../findings/finding';
import type { LetStatement } from '../language/model';
import type { Effective, Program } from '../language/program';
import { acceptance, type Acceptance } from './acceptance';
import { evaluateStatements } from './evaluateStatements';
import { evaluateExpression, type Lookup } from './expression';
import type { Checks } from './checkRun';
import type { Memo } from './memo';
import type { StatementOutcome } from './outcome';
import type { PreparedRun } from './preparedRun';
import { evaluateRequirement } from './requirement';
import { requirementFindings } from './requirementFindings';
import type { Evaluated, Requirement, Result } from './result';
import { letResult, statementResults } from './results';
import { stateQuantities, type Stated } from './states';
import type { TypedValue } from './typedValue';

export interface ProgramInput {
  readonly program: Program;
  readonly run: PreparedRun;
  /** Findings of reading and preparing the data. */
  readonly dataFindings: readonly Finding[];
  readonly limit: (code: FindingCode) => number;
  /** Findings that look at outcomes: windows, overlaps, levels, baselines, conditions. */
  readonly checks: Checks;
}

/** All results, requirements, constructions and findings of one gloss on one run. */
export function evaluateProgram(
  input: ProgramInput,
  memo: Memo,
  counters: Counters,
): Evaluated & { acceptance: Acceptance } {
  const { program, run } = input;
  const outcomes = evaluateStatements(program, run, input.limit, memo, counters);
  const findings: Finding[] = [...program.findings, ...input.dataFindings];
  for (const outcome of outcomes.values()) findings.push(...outcome.findings);
  findings.push(...input.checks.onOutcomes(outcomes));

  const last = lastRevision(memo, run);
  const stated = stateQuantities({ program, run, outcomes, findings }, last?.stated);
  const made = new Map<Stated, readonly Result[]>();
  const values = new Map<string, TypedValue>();
  const results: Result[] = [];
  for (const [outcome, state] of stated) {
    for (const q of state.quantities) values.set(`${outcome.name}.${q.quantity}`, q.value);
    const own = last?.results.get(state) ?? statementResults(outcome, state.quantities);
    made.set(state, own);
    results.push(...own);
  }
  memo.set(lastKey(run), { stated, results: made } satisfies LastRevision);
  const lookup: Lookup = (name, quantity) => {
    const known = values.get(quantity === null ? name : `${name}.${quantity}`);
    if (known !== undefined) return known;
    const outcome = outcomes.get(name);
    return outcome === undefined ? null : missingQuantity(outcome);
  };
  for (const effective of program.order) {
    if (effective.statement.kind !== 'let') continue;
    const source = effective as Effective<LetStatement>;
    counters.add('lets');
    const value =
      source.failed === null
        ? evaluateExpression(source.statement.expression, lookup, source.statement.name)
        : failedLet(source);
    values.set(source.statement.name, value);
    results.push(letResult(source, value));
  }
  findings.push(...input.checks.onResults(results));
  const accepted = acceptance(program, findings);
  const requirements: Requirement[] = [];
  for (const source of program.requires) {
    if (source.failed !== null) continue;
    const { requirement, reasons } = evaluateRequirement(source, lookup, (r) => accepted.acceptsReason(r));
    requirements.push(requirement);
    findings.push(...requirementFindings(source, requirement, reasons));
  }
  const constructions = [...outcomes.values()].flatMap((o) => (o.construction === null ? [] : [o.construction]));
  const final = acceptance(program, findings);
  findings.push(...final.unused());
  return { results, requirements, constructions, findings, acceptance: final };
}

/** What was made of outcomes in the last revision on the same run: the next one mostly has the same. */
interface LastRevision {
  readonly stated: ReadonlyMap<StatementOutcome, Stated>;
  readonly results: ReadonlyMap<Stated, readonly Result[]>;
}

function lastKey(run: PreparedRun): string {
  return `last revision on ${run.key}`;
}

function lastRevision(memo: Memo, run: PreparedRun): LastRevision | undefined {
  return memo.get(lastKey(run)) as LastRevision | undefined;
}

function failedLet(source: Effective<LetStatement>): TypedValue {
  return {
    uncertain: null,
    dimension: [0, 0, 0, 0, 0, 0],
    kind: 'number',
    basis: null,
    state: 'failed',
    limit: null,
    signed: false,
    reasons: [{ code: source.failed ?? 'dependency', name: source.statement.name }],
    unit: source.statement.show,
  };
}

/** A quantity that this statement does not give here: it failed, or the curve does not show it. */
function missingQuantity(outcome: StatementOutcome): TypedValue {
  return {
    uncertain: null,
    dimension: [0, 0, 0, 0, 0, 0],
    kind: 'number',
    basis: null,
    state: 'failed',
    limit: null,
    signed: false,
    reasons: [{ code: outcome.failure ?? 'quantity-not-shown', name: outcome.name }],
    unit: null,
  };
}
