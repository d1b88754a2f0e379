import { dimensions, isDimensionless, powerDimension } from '../../quantities/dimension';
import type { FunctionName } from '../model';
import { functionRecord } from '../vocabulary/functions';
import { writeExpression } from '../writing/expressions';
import { commonType, isProblem, withUnit, type Operand } from './compatible';
import { problem, replacing, type Problem } from './problem';
import { anyBasis, plainNumber, temperatureDifference, typeWords, type ValueType } from './valueType';

/** What a function makes of its arguments, of which there are as many as its record asks for. */
export function functionType(name: FunctionName, operands: readonly Operand[]): ValueType | Problem {
  const first = operands[0]!;
  switch (functionRecord(name)!.rule) {
    case 'same':
      return listedType(operands, name);
    case 'spread': {
      const type = listedType(operands, name);
      return !isProblem(type) && type.kind === 'temperature' ? temperatureDifference : type;
    }
    case 'relative': {
      const type = listedType(operands, name);
      if (isProblem(type)) return type;
      const pointless = withoutPoint({ type, expression: first.expression }, 'divided');
      return isProblem(pointless) ? pointless : { kind: 'fraction', dimension: dimensions.none, basis: anyBasis };
    }
    case 'absolute value':
      return withoutPoint(first, 'taken without a sign');
    case 'square root':
      return rootType(first);
    case 'plain':
      if (first.type.kind === 'number' || first.type.kind === 'fraction') return plainNumber;
      return wrong(first, `\`${name}\` takes a plain number; this is ${typeWords(first.type)}`);
    case 'kelvin':
      if (first.type.kind === 'temperature') return temperatureDifference;
      return problem(
        'wrong-dimension',
        first.expression.token,
        `\`absolute\` takes a temperature in °C; this is ${typeWords(first.type)}`,
        [withUnit(first, '°C')],
      );
  }
}

/** The one type of values in a list. */
function listedType(operands: readonly Operand[], name: string): ValueType | Problem {
  let so = operands[0]!;
  for (const next of operands.slice(1)) {
    const both = so.type.kind === 'temperature' && next.type.kind === 'temperature';
    const type = both ? so.type : commonType(so, next, next.expression.token, `\`${name}\``);
    if (isProblem(type)) return type;
    so = { type, expression: next.expression };
  }
  return so.type;
}

function rootType(of: Operand): ValueType | Problem {
  const type = withoutPoint(of, 'put under a root');
  if (isProblem(type)) return type;
  if (isDimensionless(type.dimension)) return plainNumber;
  const dimension = powerDimension(type.dimension, 0.5);
  if (dimension !== null) return { kind: 'quantity', dimension, basis: null };
  return wrong(of, `the root of ${typeWords(type)} has no unit`);
}

function wrong(of: Operand, message: string): Problem {
  return problem('wrong-dimension', of.expression.token, message);
}

/**
 * A temperature in °C depends on where zero lies: nothing can be done with it but taking differences. `done`: what was
 * tried.
 */
export function withoutPoint(of: Operand, done: string): ValueType | Problem {
  if (of.type.kind !== 'temperature') return of.type;
  const text = `absolute(${writeExpression(of.expression, 'written')})`;
  return problem(
    'point-arithmetic',
    of.expression.token,
    `a temperature in °C cannot be ${done}, since its zero is arbitrary; \`absolute\` gives kelvin above absolute zero`,
    [replacing(of.expression.token, text)],
  );
}
