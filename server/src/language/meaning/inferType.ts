import { dimensions, overDimension, powerDimension, timesDimension, isDimensionless } from '../../quantities/dimension';
import { molarMass } from '../../quantities/molarMass';
import { atomicWeights } from '../../reference/atomicWeights';
import type { Expression } from '../model';
import { nearest } from '../nearest';
import { choices } from '../sentence';
import { usualQuantity } from '../vocabulary/quantities';
import { asKelvin, asLiteral, commonType, isProblem, type Operand } from './compatible';
import { functionType, withoutPoint } from './functionType';
import { problem, replacing, type Problem } from './problem';
import { quantityNames, quantityType } from './quantityType';
import type { NameMeaning, Scope } from './scope';
import {
  isDifference,
  plainNumber,
  productBasis,
  productType,
  quotientBasis,
  temperatureDifference,
  temperaturePoint,
  typeOfUnit,
  typeWords,
  type ValueType,
} from './valueType';

/** `type` null: it has none, or one of its names failed elsewhere, where that was said. */
export interface Inferred {
  readonly type: ValueType | null;
  readonly problems: readonly Problem[];
}

/**
 * Kind, dimension and basis of an expression (language.md 4), without any data. Every part is checked, also beside one
 * that failed.
 */
export function inferType(expression: Expression, scope: Scope): Inferred {
  const inference = new Inference(scope);
  return { type: inference.of(expression), problems: inference.problems };
}

class Inference {
  readonly problems: Problem[] = [];

  constructor(private readonly scope: Scope) {}

  of(expression: Expression): ValueType | null {
    switch (expression.node) {
      case 'amount':
        return typeOfUnit(expression.amount.unit);
      case 'formula':
        return this.formula(expression);
      case 'name':
        return this.name(expression);
      case 'negate': {
        const type = this.of(expression.of);
        return type === null ? null : this.notPoint({ type, expression: expression.of }, 'turned in sign');
      }
      case 'binary':
        return this.binary(expression);
      case 'call':
        return this.call(expression);
    }
  }

  private fail(found: Problem): null {
    this.problems.push(found);
    return null;
  }

  private formula(expression: Extract<Expression, { node: 'formula' }>): ValueType | null {
    const mass = molarMass(expression.formula, atomicWeights);
    if (mass.ok) return { kind: 'quantity', dimension: dimensions.molarMass, basis: null };
    const { offset, length, message } = mass.failure;
    return this.fail({
      ...problem('bad-formula', `${expression.token}.formula`, message),
      within: { offset, length },
    });
  }

  private name(expression: Extract<Expression, { node: 'name' }>): ValueType | null {
    const { name, quantity, token } = expression;
    const meaning = this.scope.lookup(name);
    if (meaning === null) return this.unknownName(name, token);
    switch (meaning.means) {
      case 'unknown':
        return null;
      case 'requirement':
        return this.fail(problem('unknown-name', `${token}.name`, `\`${name}\` is a requirement and has no value`));
      case 'value':
        if (quantity === null) return meaning.type;
        return this.fail(
          problem('unknown-quantity', `${token}.quantity`, `\`${name}\` is one value and has no quantities`, [
            replacing(token, name),
          ]),
        );
      case 'evaluation':
        return quantity === null ? this.bareName(name, meaning, token) : this.quantity(expression, quantity, meaning);
    }
  }

  private unknownName(name: string, token: string): null {
    const meant = nearest(name, this.scope.names(), 3);
    const hint = meant.length === 0 ? '' : `; there is ${choices(meant, 'and')}`;
    return this.fail(
      problem(
        'unknown-name',
        `${token}.name`,
        `nothing is called \`${name}\`${hint}`,
        meant.map((text) => replacing(`${token}.name`, text)),
      ),
    );
  }

  private bareName(name: string, of: Extract<NameMeaning, { means: 'evaluation' }>, token: string): null {
    const names = quantityNames(of);
    const usual = names.includes(usualQuantity[of.kind]) ? usualQuantity[of.kind] : names[0];
    return this.fail(
      problem(
        'quantity-missing',
        token,
        `\`${name}\` is a ${of.kind} with several quantities; name one, as in \`${name}.${usual ?? ''}\``,
        [usual === undefined ? null : replacing(token, `${name}.${usual}`)],
      ),
    );
  }

  private quantity(
    expression: Extract<Expression, { node: 'name' }>,
    quantity: string,
    of: Extract<NameMeaning, { means: 'evaluation' }>,
  ): ValueType | null {
    const type = quantityType(of, quantity);
    if (type !== null) return of.failed ? null : type;
    const names = quantityNames(of);
    const twin = quantity === 'temperature' ? 'time' : `${quantity}_time`;
    const meant = of.inHold && names.includes(twin) ? [twin] : nearest(quantity, names, 2);
    const where = of.inHold ? ' in a hold' : of.signal !== null && of.signal !== 'heatflow' ? ` of ${of.signal}` : '';
    return this.fail(
      problem(
        'unknown-quantity',
        `${expression.token}.quantity`,
        `a ${of.kind}${where} has no quantity \`${quantity}\`; it has ${choices(names, 'and')}`,
        meant.map((text) => replacing(`${expression.token}.quantity`, text)),
      ),
    );
  }

  private binary(expression: Extract<Expression, { node: 'binary' }>): ValueType | null {
    const left = this.of(expression.left);
    const right = this.of(expression.right);
    if (left === null || right === null) return null;
    const a = { type: left, expression: expression.left };
    const b = { type: right, expression: expression.right };
    switch (expression.op) {
      case '+':
      case '-':
        return this.sum(a, b, expression.op, expression.token);
      case '*':
      case '/':
        return this.product(a, b, expression.op);
      case '^':
        return this.power(a, b);
    }
  }

  private sum(a: Operand, b: Operand, op: '+' | '-', token: string): ValueType | null {
    const points = [a, b].filter((operand) => operand.type.kind === 'temperature').length;
    if (points === 0 || this.isBare(a) || this.isBare(b))
      return this.settled(commonType(a, b, token, op === '+' ? 'a sum' : 'a difference'));
    if (points === 2) {
      if (op === '-') return temperatureDifference;
      return this.fail(
        problem('point-arithmetic', token, 'two temperatures cannot be added; a difference is written in K', [
          asKelvin(b) ?? asKelvin(a),
        ]),
      );
    }
    const point = a.type.kind === 'temperature' ? a : b;
    const other = point === a ? b : a;
    if (!isDifference(other.type)) return this.settled(commonType(a, b, token, op === '+' ? 'a sum' : 'a difference'));
    if (point === a || op === '+') return temperaturePoint;
    return this.fail(problem('point-arithmetic', token, 'a temperature cannot be taken off a difference'));
  }

  private isBare(operand: Operand): boolean {
    return operand.type.kind === 'number' && asLiteral(operand.expression) !== null;
  }

  private settled(type: ValueType | Problem): ValueType | null {
    return isProblem(type) ? this.fail(type) : type;
  }

  private product(a: Operand, b: Operand, op: '*' | '/'): ValueType | null {
    const known = [a, b].map((operand) => this.notPoint(operand, op === '*' ? 'multiplied' : 'divided'));
    if (known.includes(null)) return null;
    const dimension = (op === '*' ? timesDimension : overDimension)(a.type.dimension, b.type.dimension);
    return productType(
      dimension,
      op === '*' ? productBasis(a.type.basis, b.type.basis) : quotientBasis(a.type.basis, b.type.basis),
    );
  }

  private power(a: Operand, b: Operand): ValueType | null {
    if (this.notPoint(a, 'raised to a power') === null || this.notPoint(b, 'used as an exponent') === null) return null;
    if (b.type.kind !== 'number') {
      return this.fail(
        problem('wrong-dimension', b.expression.token, `an exponent is a plain number; this is ${typeWords(b.type)}`),
      );
    }
    const exponent = constant(b.expression);
    if (isDimensionless(a.type.dimension)) return exponent === 1 ? a.type : plainNumber;
    const raised = exponent === null ? null : powerDimension(a.type.dimension, exponent);
    if (raised !== null)
      return isDimensionless(raised) ? plainNumber : { kind: 'quantity', dimension: raised, basis: null };
    const message =
      exponent === null
        ? `${typeWords(a.type)} can be raised to a written number only, so that its unit is known`
        : `${typeWords(a.type)} to this power has no unit`;
    return this.fail(problem('wrong-dimension', b.expression.token, message));
  }

  private call(expression: Extract<Expression, { node: 'call' }>): ValueType | null {
    const operands: Operand[] = [];
    for (const arg of expression.args) {
      const type = this.of(arg);
      if (type !== null) operands.push({ type, expression: arg });
    }
    return operands.length < expression.args.length ? null : this.settled(functionType(expression.name, operands));
  }

  private notPoint(of: Operand, done: string): ValueType | null {
    return this.settled(withoutPoint(of, done));
  }
}

/** The value of a written exponent; null where it is computed from names. */
function constant(expression: Expression): number | null {
  if (expression.node === 'amount') return expression.amount.value;
  if (expression.node === 'negate') {
    const of = constant(expression.of);
    return of === null ? null : -of;
  }
  if (expression.node !== 'binary') return null;
  const left = constant(expression.left);
  const right = constant(expression.right);
  if (left === null || right === null) return null;
  // Of written exponents only quotients and products occur: `1/2`.
  return expression.op === '/' ? left / right : expression.op === '*' ? left * right : null;
}
