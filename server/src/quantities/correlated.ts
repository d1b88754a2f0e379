import { failed, success, type Outcome } from '../base/outcome';
import type { Part, Uncertain } from './uncertain';

/**
 * Values that were measured together, with a known correlation matrix (JCGM 100, 5.2.2), as values over shared
 * independent influences: the Cholesky factor of the matrix, row by row. The first value rests on one influence named
 * after it, each later one on those and on one of its own, named `NAME beside …`.
 *
 * `us`: standard uncertainties; `matrix`: symmetric, ones on the diagonal, positive semidefinite within 1e-9; `dofs`:
 * degrees of freedom of each, null for many. Where all are equal and finite the values come from the same observations
 * and count as one group in the effective degrees of freedom. Fails where the matrix is no correlation matrix.
 */
export function correlated(
  values: readonly number[],
  us: readonly number[],
  matrix: readonly (readonly number[])[],
  names: readonly string[],
  dofs: readonly (number | null)[],
): Outcome<readonly Uncertain[], string> {
  const n = values.length;
  if ([us, matrix, names, dofs].some((list) => list.length !== n) || matrix.some((row) => row.length !== n)) {
    return failed(`${n} values need ${n} uncertainties, names, degrees of freedom and a ${n} by ${n} matrix`);
  }
  const factor = choleskyFactor(matrix);
  if (factor === null) return failed('not a correlation matrix: symmetric, ones on the diagonal, no negative variance');
  const first = dofs[0] ?? null;
  const together = n > 1 && first !== null && dofs.every((dof) => dof === first);
  const group = together ? { group: names.join(', ') } : {};
  const inputs = names.map((name, j) => (j === 0 ? name : `${name} beside ${names.slice(0, j).join(', ')}`));
  return success(
    values.map((value, i) => {
      const parts: Part[] = [];
      for (let j = 0; j <= i; j++) {
        const loading = factor[i]![j]!;
        if (loading !== 0) parts.push({ input: inputs[j]!, u: loading * us[i]!, dof: dofs[j]!, ...group });
      }
      return { value, parts };
    }),
  );
}

/** Lower triangle L with L·Lᵀ = matrix; a direction without variance (r = ±1) gets a column of zeros. */
function choleskyFactor(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const n = matrix.length;
  const tolerance = 1e-9;
  const l: number[][] = matrix.map(() => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    if (Math.abs(matrix[i]![i]! - 1) > tolerance) return null;
    for (let j = 0; j <= i; j++) {
      const r = matrix[i]![j]!;
      if (!(Math.abs(r - matrix[j]![i]!) <= tolerance)) return null;
      let rest = r;
      for (let k = 0; k < j; k++) rest -= l[i]![k]! * l[j]![k]!;
      if (i === j) {
        if (rest < -tolerance) return null;
        l[i]![i] = rest < tolerance ? 0 : Math.sqrt(rest);
      } else if (l[j]![j] === 0) {
        if (Math.abs(rest) > Math.sqrt(tolerance)) return null;
      } else {
        l[i]![j] = rest / l[j]![j]!;
      }
    }
  }
  return l;
}
