import type { Amount, Expression, RequireStatement } from '../model';
import { asKelvin, commonType, isProblem, type Operand } from './compatible';
import { inferType } from './inferType';
import { problem, type Problem } from './problem';
import type { Scope } from './scope';
import { isDifference, typeOfUnit, type ValueType } from './valueType';

/** Names, kinds and units of a requirement. */
export function requirementProblems(statement: RequireStatement, scope: Scope): readonly Problem[] {
  const left = inferType(statement.left, scope);
  const { limit } = statement;
  if (limit.form !== 'in') {
    const right = inferType(limit.right, scope);
    const problems = [...left.problems, ...right.problems];
    if (left.type === null || right.type === null) return problems;
    return [
      ...problems,
      ...compared(
        { type: left.type, expression: statement.left },
        { type: right.type, expression: limit.right },
        'limit',
      ),
    ];
  }
  if (left.type === null) return left.problems;
  const operand: Operand = { type: left.type, expression: statement.left };
  const { from, to } = limit.range;
  const ends = [ended(operand, from, 'limit.from'), ended(operand, to, 'limit.to')];
  const [first = [], last = []] = ends;
  // One unit, or none, serves both ends: what is wrong with it is said once.
  const same = from.unit?.text === to.unit?.text;
  return [...left.problems, ...(same && last.length > 0 ? last : [...first, ...last])];
}

function ended(left: Operand, end: Amount, token: string): readonly Problem[] {
  const expression: Expression = { node: 'amount', amount: end, token };
  return compared(left, { type: typeOfUnit(end.unit), expression }, token);
}

/** The two sides of a limit: of one kind and basis, but K may stand where a temperature is due. */
function compared(left: Operand, right: Operand, token: string): readonly Problem[] {
  const [a, b] = [left.type, right.type];
  if (a.kind === 'temperature' && (b.kind === 'temperature' || isDifference(b))) return [];
  if (isDifference(a) && b.kind === 'temperature') {
    return [
      problem(
        'point-for-difference',
        right.expression.token,
        'the left side is a difference, which is compared with one in K',
        [asKelvin(right)],
      ),
    ];
  }
  const common: ValueType | Problem = commonType(left, right, token, 'a limit');
  return isProblem(common) ? [pointed(common, a, left)] : [];
}

/** A bare limit of a temperature is proposed in °C, not as a difference. */
function pointed(found: Problem, type: ValueType, left: Operand): Problem {
  if (found.code !== 'unit-missing' || type.kind !== 'temperature' || found.token === left.expression.token)
    return found;
  return {
    ...found,
    fixes: found.fixes.map((fix) => ({
      ...fix,
      text: fix.text.replace(/ K$/, ' °C'),
      title: fix.title.replace(/ K`$/, ' °C`'),
    })),
  };
}
