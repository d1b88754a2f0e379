import { sameDimension } from '../../quantities/dimension';
import type { Expression } from '../model';
import { writeAmount } from '../writing/amounts';
import { problem, replacing, type Problem, type ProblemFix } from './problem';
import { anyBasis, isDifference, plainNumber, typeWords, usualUnit, type ValueType } from './valueType';

/** A value with the expression it comes from: what can be mended depends on how it was written. */
export interface Operand {
  readonly type: ValueType;
  readonly expression: Expression;
}

/** A literal of its own. */
export function asLiteral(expression: Expression): Extract<Expression, { node: 'amount' }> | null {
  return expression.node === 'amount' ? expression : null;
}

/** Whether no name has a part in it: then a bare number was meant as it stands. */
function isConstant(expression: Expression): boolean {
  switch (expression.node) {
    case 'amount':
    case 'formula':
      return true;
    case 'name':
      return false;
    case 'negate':
      return isConstant(expression.of);
    case 'call':
      return expression.args.every(isConstant);
    case 'binary':
      return isConstant(expression.left) && isConstant(expression.right);
  }
}

export function withUnit(literal: Operand, unit: string): ProblemFix | null {
  const amount = asLiteral(literal.expression);
  if (amount === null || amount.amount.unit !== null) return null;
  return replacing(literal.expression.token, `${amount.amount.text} ${unit}`);
}

/** The same literal as a difference: `5 K` for `5 °C`. */
export function asKelvin(operand: Operand): ProblemFix | null {
  const literal = asLiteral(operand.expression);
  if (literal === null || literal.amount.unit === null) return null;
  const { unit } = literal.amount;
  const bare = writeAmount(literal.amount, 'written').slice(0, -unit.text.length);
  return replacing(literal.token, `${bare}K`);
}

/**
 * The common type of two values that are added, compared or listed, temperatures aside (their rules differ). `token`:
 * what is pointed at where neither alone is to blame.
 */
export function commonType(a: Operand, b: Operand, token: string, doing: string): ValueType | Problem {
  const kinds = [a.type.kind, b.type.kind];
  if (kinds.includes('number') && kinds.includes('fraction')) return numberAndFraction(a, b, doing);
  if (!sameDimension(a.type.dimension, b.type.dimension) || kinds[0] !== kinds[1]) return different(a, b, token, doing);
  const basis = commonBasis(a.type.basis, b.type.basis);
  if (basis !== undefined) return { ...a.type, basis };
  return problem(
    'basis-mixed',
    token,
    `the two sides are taken over different masses, ${a.type.basis ?? ''} and ${b.type.basis ?? ''}; ${doing} needs one basis, set by \`per\``,
  );
}

/** undefined: two different ones. */
function commonBasis(a: string | null, b: string | null): string | null | undefined {
  if (a === b) return a;
  if (a === null || a === anyBasis) return b ?? a;
  if (b === null || b === anyBasis) return a;
  return undefined;
}

/**
 * A fraction of a basis and a plain number do not go together. A literal in % is a number as well, and goes with one
 * that was computed (`crystallinity <= 0.1` or `<= 10 %`), but not with one that was written bare.
 */
function numberAndFraction(a: Operand, b: Operand, doing: string): ValueType | Problem {
  const [number, fraction] = a.type.kind === 'number' ? [a, b] : [b, a];
  if (fraction.type.basis === anyBasis && isConstant(fraction.expression) && !isConstant(number.expression)) {
    return plainNumber;
  }
  return problem(
    'bare-number-with-fraction',
    number.expression.token,
    `a fraction is shown in %, and a bare number beside it would count a hundredfold; ${doing} needs both in %`,
    [withUnit(number, '%')],
  );
}

function different(a: Operand, b: Operand, token: string, doing: string): Problem {
  for (const [bare, other] of [
    [a, b],
    [b, a],
  ] as const) {
    if (bare.type.kind === 'number' && asLiteral(bare.expression)?.amount.unit === null) {
      const unit = usualUnit(other.type);
      const difference = other.type.kind === 'temperature' || isDifference(other.type);
      return problem(
        'unit-missing',
        bare.expression.token,
        `the number needs a unit, as the other side is ${typeWords(other.type)}`,
        [withUnit(bare, difference ? 'K' : unit)],
      );
    }
  }
  return problem(
    'wrong-dimension',
    token,
    `${doing} needs two values of one kind; here are ${typeWords(a.type)} and ${typeWords(b.type)}`,
  );
}

export function isProblem(of: ValueType | Problem): of is Problem {
  return 'code' in of;
}
