import type { Expression } from '../../language/model';
import type { Program } from '../../language/program';

/** `NAME.quantity` as an expression uses it. */
export interface Reference {
  readonly name: string;
  readonly quantity: string;
}

/** One `let` or `require` with everything it refers to. */
export interface Use {
  readonly statement: string;
  readonly references: readonly Reference[];
}

/** What the values and requirements of a program refer to. */
export function usesOf(program: Program): readonly Use[] {
  const uses: Use[] = [];
  for (const { id, statement } of program.order) {
    if (statement.kind === 'let') uses.push({ statement: id, references: referencesOf(statement.expression) });
  }
  for (const { id, statement } of program.requires) {
    const right = statement.limit.form === 'in' ? [] : referencesOf(statement.limit.right);
    uses.push({ statement: id, references: [...referencesOf(statement.left), ...right] });
  }
  return uses;
}

export function referencesOf(expression: Expression): Reference[] {
  switch (expression.node) {
    case 'name':
      return expression.quantity === null ? [] : [{ name: expression.name, quantity: expression.quantity }];
    case 'call':
      return expression.args.flatMap(referencesOf);
    case 'negate':
      return referencesOf(expression.of);
    case 'binary':
      return [...referencesOf(expression.left), ...referencesOf(expression.right)];
    default:
      return [];
  }
}

/** The formulas of an expression that multiply it, and those that divide it. */
export function formulasOf(expression: Expression): { readonly above: string[]; readonly below: string[] } {
  const none = { above: [], below: [] };
  switch (expression.node) {
    case 'formula':
      return { above: [expression.formula], below: [] };
    case 'negate':
      return formulasOf(expression.of);
    case 'call':
      return expression.args.map(formulasOf).reduce(together, none);
    case 'binary': {
      const right = formulasOf(expression.right);
      const turned = expression.op === '/' ? { above: right.below, below: right.above } : right;
      return together(formulasOf(expression.left), turned);
    }
    default:
      return none;
  }
}

function together(a: ReturnType<typeof formulasOf>, b: ReturnType<typeof formulasOf>): ReturnType<typeof formulasOf> {
  return { above: [...a.above, ...b.above], below: [...a.below, ...b.below] };
}
