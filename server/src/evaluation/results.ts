import { anyBasis } from '../language/meaning/valueType';
import type { LetStatement } from '../language/model';
import { quantityRecord, usualQuantity } from '../language/vocabulary/quantities';
import type { Effective } from '../language/program';
import { differenceFromSI, fromSI } from '../quantities/convert';
import { coverageFactor } from '../quantities/coverageFactor';
import { effectiveDof } from '../quantities/effectiveDof';
import { parseUnit, unitOne } from '../quantities/parseUnit';
import { shownUnit } from '../quantities/shownUnit';
import { contributions, standardUncertainty } from '../quantities/standardUncertainty';
import type { Uncertain } from '../quantities/uncertain';
import type { Unit } from '../quantities/unit';
import type { StatementOutcome } from './outcome';
import type { Result } from './result';
import type { StatedQuantity } from './states';
import { withSize, type Reason, type TypedValue } from './typedValue';

/** What all results of one statement have alike. */
type Shared = Pick<Result, 'name' | 'kind' | 'segment' | 'window' | 'method' | 'file' | 'statement'>;

/** Results of one evaluation statement, one a quantity. A failed statement gives one line that says so. */
export function statementResults(outcome: StatementOutcome, quantities: readonly StatedQuantity[]): readonly Result[] {
  const shared: Shared = {
    name: outcome.name,
    kind: outcome.source.statement.kind,
    segment: outcome.placed?.segment?.name ?? null,
    window: outcome.placed?.shown ?? null,
    method: outcome.method,
    file: outcome.source.file,
    statement: outcome.source.id,
  };
  if (outcome.failure !== null && quantities.length === 0) return [failedQuantity(shared, outcome)];
  return quantities.map((q) => {
    const unit = q.value.unit ?? shownUnit(q.value.dimension, q.value.kind);
    return resultOf(shared, `${outcome.name}.${q.quantity}`, q.quantity, q.value, q.value.basis, unit);
  });
}

/** The usual quantity of the kind, failed, for a statement that has none: a failure must not vanish from the results. */
function failedQuantity(shared: Shared, outcome: StatementOutcome): Result {
  const { kind } = outcome.source.statement;
  const quantity = usualQuantity[kind];
  const unit = parseUnit(quantityRecord(kind, quantity)?.unit ?? '1');
  const value: TypedValue = {
    uncertain: null,
    dimension: unitOne.dimension,
    kind: 'number',
    basis: null,
    state: 'failed',
    limit: null,
    signed: false,
    reasons: [{ code: outcome.failure ?? 'dependency', name: '' }],
    unit: null,
  };
  return resultOf(shared, `${outcome.name}.${quantity}`, quantity, value, null, unit.ok ? unit.value : unitOne);
}

export function letResult(source: Effective<LetStatement>, value: TypedValue): Result {
  const { statement } = source;
  const shared: Shared = {
    name: statement.name,
    kind: 'let',
    segment: null,
    window: null,
    method: '',
    file: source.file,
    statement: source.id,
  };
  const unit = statement.show ?? shownUnit(value.dimension, value.kind);
  return resultOf(shared, statement.name, 'value', value, value.basis === anyBasis ? null : value.basis, unit);
}

// Written out: spread together from parts, an object of so many fields costs kilobytes, and there is one for every quantity
// of every revision.
function resultOf(
  shared: Shared,
  id: string,
  quantity: string,
  value: TypedValue,
  basis: string | null,
  unit: Unit,
): Result {
  const known = value.uncertain !== null && value.state !== 'failed' && value.state !== 'sum-only';
  const uncertain = known && value.state !== 'not-detected' ? inUnit(value.uncertain!, unit) : null;
  const dof = uncertain === null ? null : effectiveDof(uncertain);
  return {
    id,
    name: shared.name,
    quantity,
    kind: shared.kind,
    state: value.state,
    value: uncertain?.value ?? null,
    uncertainty: uncertain === null ? null : standardUncertainty(uncertain),
    k: coverageFactor(dof),
    dof,
    unit,
    valueKind: value.kind,
    basis,
    limit: value.limit === null ? null : differenceFromSI(value.limit, unit),
    segment: shared.segment,
    window: shared.window,
    method: shared.method,
    contributions: uncertain === null ? [] : contributions(uncertain),
    reasons: value.reasons.map(reasonText),
    uncertain,
    file: shared.file,
    statement: shared.statement,
  };
}

function reasonText(reason: Reason): string {
  return reason.name === '' ? reason.code : `${reason.code} (${reason.name})`;
}

function inUnit(si: Uncertain, unit: Unit): Uncertain {
  return {
    value: fromSI(si.value, unit),
    parts: si.parts.map((p) => withSize(p, differenceFromSI(p.u, unit))),
  };
}
