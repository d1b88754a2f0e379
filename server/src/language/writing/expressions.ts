import type { Expression } from '../model';
import { writeAmount, type Digits } from './amounts';

/** Binding strength of what stands at the top of an expression: a sum 1, a product 2, a sign 3, a power 4, else 5. */
function strength(expression: Expression): number {
  switch (expression.node) {
    case 'binary':
      return expression.op === '^' ? 4 : expression.op === '*' || expression.op === '/' ? 2 : 1;
    case 'negate':
      return 3;
    // A minus of a literal binds as a sign does.
    case 'amount':
      return expression.amount.text.startsWith('-') ? 3 : 5;
    default:
      return 5;
  }
}

/** An expression with the brackets it needs and no others. */
export function writeExpression(expression: Expression, digits: Digits): string {
  const part = (of: Expression, least: number): string => {
    const text = writeExpression(of, digits);
    return strength(of) < least ? `(${text})` : text;
  };
  switch (expression.node) {
    case 'amount':
      return writeAmount(expression.amount, digits);
    case 'formula':
      return `M(${writeFormula(expression.formula)})`;
    case 'name':
      return expression.quantity === null ? expression.name : `${expression.name}.${expression.quantity}`;
    case 'call':
      return `${expression.name}(${expression.args.map((arg) => writeExpression(arg, digits)).join(', ')})`;
    case 'negate':
      return `-${part(expression.of, 3)}`;
    case 'binary': {
      const own = strength(expression);
      // Powers are grouped from the right, the others from the left.
      const [left, right] = expression.op === '^' ? [5, 3] : [own, own + 1];
      return `${part(expression.left, left)} ${expression.op} ${part(expression.right, right)}`;
    }
  }
}

/** Blanks around a joiner and its spelling change nothing. */
function writeFormula(formula: string): string {
  return formula.trim().replace(/ *[·*\u22c5] */g, '·');
}
