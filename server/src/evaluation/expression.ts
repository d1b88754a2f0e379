import type { Amount, Expression } from '../language/model';
import * as arithmetic from '../quantities/arithmetic';
import * as functions from '../quantities/functions';
import { anyBasis, productBasis, productType, quotientBasis } from '../language/meaning/valueType';
import { molarMass } from '../quantities/molarMass';
import { atomicWeights } from '../reference/atomicWeights';
import { differenceToSI, kindOf, toSI } from '../quantities/convert';
import { dimensions, isDimensionless, overDimension, powerDimension, timesDimension } from '../quantities/dimension';
import type { Uncertain } from '../quantities/uncertain';
import type { Kind } from '../quantities/unit';
import { joinNearEdges } from './influences';
import { mergeReasons, strongest, type Reason, type TypedValue } from './typedValue';

/** Looks up `Name.quantity`, or a `let` by its bare name; null where static checks already told. */
export type Lookup = (name: string, quantity: string | null) => TypedValue | null;

/**
 * Computes an expression with uncertainty (JCGM 100:2008, 5.1 and 5.2): first-order gradients over shared influences.
 * Kinds and units were checked before; here they are only carried along. `owner` names the statement, so that a literal
 * with ± is an influence of its own.
 */
export function evaluateExpression(expression: Expression, lookup: Lookup, owner: string): TypedValue {
  const names = new Map<string, TypedValue>();
  const operands: { key: string; value: TypedValue }[] = [];
  collect(expression, lookup, operands);
  // Edges within 5 K of each other are one decision, over everything that meets in this expression.
  const joined = joinNearEdges(operands.map((o) => o.value.uncertain ?? { value: 0, parts: [] }));
  operands.forEach((o, i) => {
    names.set(o.key, { ...o.value, uncertain: o.value.uncertain === null ? null : joined[i] });
  });
  return compute(expression, (name, quantity) => names.get(keyOf(name, quantity)) ?? null, owner);
}

function keyOf(name: string, quantity: string | null): string {
  return quantity === null ? name : `${name}.${quantity}`;
}

function collect(expression: Expression, lookup: Lookup, into: { key: string; value: TypedValue }[]): void {
  switch (expression.node) {
    case 'name': {
      const key = keyOf(expression.name, expression.quantity);
      const value = lookup(expression.name, expression.quantity);
      if (value !== null && !into.some((o) => o.key === key)) into.push({ key, value });
      return;
    }
    case 'negate':
      return collect(expression.of, lookup, into);
    case 'binary':
      collect(expression.left, lookup, into);
      return collect(expression.right, lookup, into);
    case 'call':
      for (const arg of expression.args) collect(arg, lookup, into);
      return;
    default:
  }
}

function compute(expression: Expression, lookup: Lookup, owner: string): TypedValue {
  switch (expression.node) {
    case 'amount':
      return literal(expression.amount, literalInput(expression.amount, expression.token, owner));
    case 'formula': {
      const mass = molarMass(expression.formula, atomicWeights);
      if (!mass.ok) return failedValue([{ code: 'bad-formula', name: owner }]);
      // g/mol to kg/mol.
      return plain(arithmetic.scale(mass.value.value, 1e-3), dimensions.molarMass, 'quantity');
    }
    case 'name':
      return (
        lookup(expression.name, expression.quantity) ?? failedValue([{ code: 'dependency', name: expression.name }])
      );
    case 'negate': {
      const of = settle(compute(expression.of, lookup, owner), owner);
      return withValue(of, (v) => arithmetic.negate(v));
    }
    case 'binary':
      return binary(
        expression.op,
        compute(expression.left, lookup, owner),
        compute(expression.right, lookup, owner),
        owner,
      );
    case 'call':
      return call(
        expression.name,
        expression.args.map((a) => compute(a, lookup, owner)),
        owner,
      );
  }
}

/**
 * Each ± is an influence of its own: two that are written alike in one expression are told apart by their place in it.
 */
function literalInput(amount: Amount, token: string, owner: string): string {
  const place = token.replace(/^expression\/?/, '');
  return `${amount.text} in ${owner}${place === '' ? '' : ` (${place})`}`;
}

/** A literal; its ± is a standard uncertainty and an influence of its own. */
export function literal(amount: Amount, input: string): TypedValue {
  const kind = kindOf(amount.unit);
  const value = amount.unit === null ? amount.value : toSI(amount.value, amount.unit);
  const u = amount.u === null ? 0 : amount.unit === null ? amount.u : differenceToSI(amount.u, amount.unit);
  const uncertain = u === 0 ? arithmetic.exact(value) : arithmetic.withU(value, u, input, null);
  const typed = plain(uncertain, amount.unit?.dimension ?? dimensions.none, kind);
  return kind === 'fraction' ? { ...typed, basis: anyBasis } : typed;
}

function plain(uncertain: Uncertain, dimension: TypedValue['dimension'], kind: Kind): TypedValue {
  return {
    uncertain,
    dimension,
    kind,
    basis: null,
    state: 'number',
    limit: null,
    signed: false,
    reasons: [],
    unit: null,
  };
}

function failedValue(reasons: readonly Reason[]): TypedValue {
  return { ...plain({ value: 0, parts: [] }, dimensions.none, 'number'), uncertain: null, state: 'failed', reasons };
}

function withValue(of: TypedValue, f: (v: Uncertain) => Uncertain): TypedValue {
  return { ...of, uncertain: of.uncertain === null ? null : f(of.uncertain) };
}

/**
 * What is below its detection limit x is, outside products with numbers, uniformly anywhere in 0..x (±x where either
 * sign is possible), and what rests on it is apparent (language.md 4).
 */
function settle(value: TypedValue, owner: string): TypedValue {
  if (value.state !== 'not-detected' || value.limit === null) return value;
  const input = `below its limit, ${value.reasons[0]?.name ?? owner}`;
  const uncertain = value.signed
    ? arithmetic.withU(0, value.limit / Math.sqrt(3), input, null)
    : arithmetic.withU(value.limit / 2, value.limit / Math.sqrt(12), input, null);
  return { ...value, uncertain, state: 'apparent', limit: null };
}

function combined(values: readonly TypedValue[]): Pick<TypedValue, 'state' | 'reasons'> {
  return { state: strongest(values.map((v) => v.state)), reasons: mergeReasons(values.map((v) => v.reasons)) };
}

function binary(op: '+' | '-' | '*' | '/' | '^', left: TypedValue, right: TypedValue, owner: string): TypedValue {
  if (op === '*' || op === '/') {
    if (op === '/' && right.state === 'not-detected') return { ...failedValue(right.reasons) };
    if (left.state === 'not-detected' && scales(right)) return scaled(left, right, op);
    if (op === '*' && right.state === 'not-detected' && scales(left)) return scaled(right, left, op);
  }
  const a = settle(left, owner);
  const b = settle(right, owner);
  const both = combined([a, b]);
  const shape = shapeOf(op, a, b);
  const { basis } = shape;
  if (a.uncertain === null || b.uncertain === null) {
    return { ...shape, basis, uncertain: null, limit: null, signed: false, unit: null, ...both };
  }
  const uncertain = apply(op, a.uncertain, b.uncertain);
  if (!Number.isFinite(uncertain.value)) {
    return { ...failedValue([...both.reasons, { code: 'not-a-number', name: owner }]), dimension: shape.dimension };
  }
  const unit =
    op === '+' || op === '-'
      ? a.kind === 'temperature' && b.kind === 'temperature'
        ? null
        : (a.unit ?? b.unit)
      : null;
  return {
    ...shape,
    basis: shape.kind === 'number' ? null : basis,
    uncertain,
    limit: null,
    signed: false,
    unit,
    ...both,
  };
}

function apply(op: '+' | '-' | '*' | '/' | '^', a: Uncertain, b: Uncertain): Uncertain {
  switch (op) {
    case '+':
      return arithmetic.add(a, b);
    case '-':
      return arithmetic.subtract(a, b);
    case '*':
      return arithmetic.multiply(a, b);
    case '/':
      return arithmetic.divide(a, b);
    case '^':
      return arithmetic.power(a, b);
  }
}

function scales(value: TypedValue): boolean {
  return value.uncertain !== null && value.state === 'number' && value.uncertain.value !== 0;
}

function scaled(small: TypedValue, by: TypedValue, op: '*' | '/'): TypedValue {
  const factor = by.uncertain!.value;
  const shape = shapeOf(op, small, by);
  const limit = op === '*' ? small.limit! * Math.abs(factor) : small.limit! / Math.abs(factor);
  return { ...small, ...shape, limit, unit: null };
}

type Shape = Pick<TypedValue, 'dimension' | 'kind' | 'basis'>;

/** Kind, dimension and basis of the result, by the rules of the static check (`inferType`). */
function shapeOf(op: '+' | '-' | '*' | '/' | '^', a: TypedValue, b: TypedValue): Shape {
  switch (op) {
    case '*':
      return productType(timesDimension(a.dimension, b.dimension), productBasis(a.basis, b.basis));
    case '/':
      return productType(overDimension(a.dimension, b.dimension), quotientBasis(a.basis, b.basis));
    case '^': {
      const exponent = b.uncertain?.value ?? 1;
      if (isDimensionless(a.dimension)) {
        return exponent === 1 ? a : { dimension: a.dimension, kind: 'number', basis: null };
      }
      const dimension = powerDimension(a.dimension, exponent) ?? a.dimension;
      return { dimension, kind: isDimensionless(dimension) ? 'number' : 'quantity', basis: null };
    }
    default: {
      const points = [a.kind, b.kind].filter((k) => k === 'temperature').length;
      const basis = a.basis === null || a.basis === anyBasis ? (b.basis ?? a.basis) : a.basis;
      const kind: Kind =
        points === 2
          ? 'quantity'
          : points === 1
            ? 'temperature'
            : a.kind === 'fraction' || b.kind === 'fraction'
              ? 'fraction'
              : a.kind;
      return { dimension: a.dimension, kind, basis };
    }
  }
}

function call(name: string, args: readonly TypedValue[], owner: string): TypedValue {
  const settled = args.map((a) => settle(a, owner));
  const both = combined(settled);
  const first = settled[0];
  if (first === undefined) return failedValue([]);
  const values = settled.map((s) => s.uncertain);
  const shape = { dimension: first.dimension, kind: first.kind, basis: first.basis, unit: first.unit };
  const give = (uncertain: Uncertain, as: Partial<TypedValue> = {}): TypedValue =>
    Number.isFinite(uncertain.value)
      ? { ...shape, uncertain, limit: null, signed: false, ...both, ...as }
      : failedValue([...both.reasons, { code: 'not-a-number', name: owner }]);
  if (values.some((v) => v === null)) return { ...shape, uncertain: null, limit: null, signed: false, ...both };
  const known = values as Uncertain[];
  const none = { dimension: dimensions.none, kind: 'number' as const, basis: null, unit: null };
  switch (name) {
    case 'mean':
      return give(functions.mean(known));
    case 'sd':
      return give(
        functions.sd(known, `spread in ${owner}`),
        first.kind === 'temperature' ? { kind: 'quantity', unit: null } : {},
      );
    case 'rsd':
      return give(functions.rsd(known, `spread in ${owner}`), { ...none, kind: 'fraction', basis: anyBasis });
    case 'min':
      return give(functions.min(known));
    case 'max':
      return give(functions.max(known));
    case 'abs':
      return give(functions.abs(known[0]));
    case 'sqrt': {
      const dimension = powerDimension(first.dimension, 0.5) ?? first.dimension;
      return give(functions.sqrt(known[0]), {
        dimension,
        kind: isDimensionless(dimension) ? 'number' : 'quantity',
        basis: null,
        unit: null,
      });
    }
    case 'ln':
      return give(functions.ln(known[0]), none);
    case 'exp':
      return give(functions.exp(known[0]), none);
    case 'absolute':
      return give(known[0], { kind: 'quantity', unit: null });
    default:
      return failedValue([]);
  }
}
