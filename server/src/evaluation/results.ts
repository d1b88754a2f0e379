import { anyBasis } from '../language/meaning/valueType';
import type { LetStatement } from '../language/model';
import type { Effective } from '../language/program';
import { differenceFromSI, fromSI } from '../quantities/convert';
import { coverageFactor } from '../quantities/coverageFactor';
import { effectiveDof } from '../quantities/effectiveDof';
import { shownUnit } from '../quantities/shownUnit';
import { contributions, standardUncertainty } from '../quantities/standardUncertainty';
import type { Uncertain } from '../quantities/uncertain';
import type { Unit } from '../quantities/unit';
import type { StatementOutcome } from './outcome';
import type { Result } from './result';
import type { StatedQuantity } from './states';
import type { Reason, TypedValue } from './typedValue';

/** Results of one evaluation statement, one a quantity. A failed statement gives one line that says so. */
export function statementResults(outcome: StatementOutcome, quantities: readonly StatedQuantity[]): Result[] {
  const shared = {
    name: outcome.name,
    kind: outcome.source.statement.kind,
    segment: outcome.placed?.segment?.name ?? null,
    window: outcome.placed?.shown ?? null,
    method: outcome.method,
    file: outcome.source.file,
    statement: outcome.source.id,
  };
  return quantities.map((q) => ({
    ...shared,
    ...numbers(q.value, q.value.unit ?? shownUnit(q.value.dimension, q.value.kind)),
    id: `${outcome.name}.${q.quantity}`,
    quantity: q.quantity,
    basis: q.value.basis,
  }));
}

export function letResult(source: Effective<LetStatement>, value: TypedValue): Result {
  const { statement } = source;
  const unit = statement.show ?? shownUnit(value.dimension, value.kind);
  return {
    name: statement.name,
    kind: 'let',
    segment: null,
    window: null,
    method: '',
    file: source.file,
    statement: source.id,
    ...numbers(value, unit),
    id: statement.name,
    quantity: 'value',
    basis: value.basis === anyBasis ? null : value.basis,
  };
}

type Numbers = Pick<
  Result,
  | 'state'
  | 'value'
  | 'uncertainty'
  | 'k'
  | 'dof'
  | 'unit'
  | 'valueKind'
  | 'limit'
  | 'contributions'
  | 'reasons'
  | 'uncertain'
>;

function numbers(value: TypedValue, unit: Unit): Numbers {
  const known = value.uncertain !== null && value.state !== 'failed' && value.state !== 'sum-only';
  const uncertain = known && value.state !== 'not-detected' ? inUnit(value.uncertain!, unit) : null;
  const dof = uncertain === null ? null : effectiveDof(uncertain);
  return {
    state: value.state,
    value: uncertain?.value ?? null,
    uncertainty: uncertain === null ? null : standardUncertainty(uncertain),
    k: coverageFactor(dof),
    dof,
    unit,
    valueKind: value.kind,
    limit: value.limit === null ? null : differenceFromSI(value.limit, unit),
    contributions: uncertain === null ? [] : contributions(uncertain),
    reasons: value.reasons.map(reasonText),
    uncertain,
  };
}

function reasonText(reason: Reason): string {
  return reason.name === '' ? reason.code : `${reason.code} (${reason.name})`;
}

function inUnit(si: Uncertain, unit: Unit): Uncertain {
  return {
    value: fromSI(si.value, unit),
    parts: si.parts.map((p) => ({ ...p, u: differenceFromSI(p.u, unit) })),
  };
}
