import type { Amount, RequireStatement } from '../language/model';
import type { Effective } from '../language/program';
import { differenceFromSI, fromSI, toSI } from '../quantities/convert';
import { coverageFactor } from '../quantities/coverageFactor';
import { effectiveDof } from '../quantities/effectiveDof';
import { standardUncertainty } from '../quantities/standardUncertainty';
import { shownUnit } from '../quantities/shownUnit';
import { verdict } from '../quantities/verdict';
import { evaluateExpression, type Lookup } from './expression';
import type { Requirement, Verdict } from './result';
import type { Reason, TypedValue } from './typedValue';

export interface RequirementOutcome {
  readonly requirement: Requirement;
  readonly reasons: readonly Reason[];
}

/** Compares with limits by JCGM 106:2012 (7.2, 8.2): y ± U inside, outside, or neither. */
export function evaluateRequirement(
  source: Effective<RequireStatement>,
  lookup: Lookup,
  allowed: (reason: Reason) => boolean,
): RequirementOutcome {
  const { statement } = source;
  const owner = statement.name ?? 'require';
  const limit = statement.limit;
  let value = evaluateExpression(statement.left, lookup, owner);
  let low: number | null = null;
  let high: number | null = null;
  if (limit.form === 'in') {
    const ends = [limit.range.from, limit.range.to].map(inSI);
    low = Math.min(...ends);
    high = Math.max(...ends);
  } else {
    const right = limit.right;
    if (right.node === 'amount' && right.amount.u === null) {
      const bound = inSI(right.amount);
      if (limit.form === '<=') high = bound;
      else low = bound;
    } else {
      // Both sides may share influences: the difference is what is compared.
      value = evaluateExpression(
        { node: 'binary', op: '-', left: statement.left, right, token: 'expression' },
        lookup,
        owner,
      );
      if (limit.form === '<=') high = 0;
      else low = 0;
    }
  }
  const u = value.uncertain === null ? null : standardUncertainty(value.uncertain);
  const dof = value.uncertain === null ? null : effectiveDof(value.uncertain);
  const k = coverageFactor(dof);
  const unit = value.unit ?? shownUnit(value.dimension, value.kind);
  const show = (si: number | null) => (si === null ? null : fromSI(si, unit));
  const showLimit = (si: number | null) =>
    written(statement).find((a) => inSI(a) === si && a.unit?.text === unit.text)?.value ?? show(si);
  return {
    reasons: value.reasons,
    requirement: {
      name: statement.name,
      statement: source.id,
      file: source.file,
      text: statement.text,
      verdict: decide(value, u, k, low, high, allowed),
      state: value.state,
      value: hasValue(value) ? show(value.uncertain!.value) : null,
      uncertainty: u === null || !hasValue(value) ? null : differenceFromSI(u, unit),
      unit,
      low: showLimit(low),
      high: showLimit(high),
      k,
    },
  };
}

function inSI(amount: Amount): number {
  return amount.unit === null ? amount.value : toSI(amount.value, amount.unit);
}

/** Limits as they are written: there and back through SI, 14 % would come out as 14.000000000000002 %. */
function written({ limit }: RequireStatement): readonly Amount[] {
  if (limit.form === 'in') return [limit.range.from, limit.range.to];
  return limit.right.node === 'amount' ? [limit.right.amount] : [];
}

function hasValue(value: TypedValue): boolean {
  return (
    value.uncertain !== null && (value.state === 'number' || value.state === 'apparent' || value.state === 'indicated')
  );
}

function decide(
  value: TypedValue,
  u: number | null,
  k: number,
  low: number | null,
  high: number | null,
  allowed: (reason: Reason) => boolean,
): Verdict {
  const within = (y: number) => (low === null || y >= low) && (high === null || y <= high);
  switch (value.state) {
    case 'failed':
      return 'not evaluated';
    case 'sum-only':
      return 'inconclusive';
    case 'not-detected': {
      const x = value.limit!;
      const ends = value.signed ? [-x, x] : [0, x];
      if (ends.every(within)) return 'met';
      const below = high !== null && ends.every((y) => y > high);
      const above = low !== null && ends.every((y) => y < low);
      return below || above ? 'not met' : 'inconclusive';
    }
    case 'apparent':
    case 'indicated':
      if (!value.reasons.every(allowed)) return 'inconclusive';
  }
  if (value.uncertain === null || u === null) return 'not evaluated';
  return verdict(value.uncertain.value, k * u, low, high);
}
