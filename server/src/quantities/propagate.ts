import { add, exact } from './arithmetic';
import { scaledParts } from './parts';
import { standardUncertainty } from './standardUncertainty';
import type { Uncertain } from './uncertain';

/**
 * Propagates through any smooth function of plain numbers (JCGM 100, 5.1.2 and 5.1.3), with numerical derivatives:
 * central differences extrapolated to step zero (Ridders, Adv. Eng. Software 4 (1982) 75), first step one standard
 * uncertainty of the input but at least 1e-5 of its value. Relative accuracy of a derivative about 1e-9 where f is
 * smooth over that step and returns doubles. Exact inputs cost no call. Undefined where f is.
 */
export function propagate(f: (inputs: readonly number[]) => number, inputs: readonly Uncertain[]): Uncertain {
  const values = inputs.map((x) => x.value);
  let result = exact(f(values));
  for (const [i, input] of inputs.entries()) {
    const u = standardUncertainty(input);
    if (input.parts.length === 0) continue;
    const along = (x: number): number => f(values.map((value, j) => (j === i ? x : value)));
    const slope = u === 0 ? 0 : derivative(along, input.value, Math.max(u, 1e-5 * Math.abs(input.value)));
    result = add(result, { value: 0, parts: scaledParts(input, slope) });
  }
  return result;
}

/** dy/dx at x by Ridders' extrapolation; NaN where f is undefined on either side however small the step. */
function derivative(f: (x: number) => number, x: number, step: number): number {
  const shrink = 1.4;
  const rows = 12;
  let h = step;
  // A step that leaves the domain of f is too long.
  for (let i = 0; i < 60 && !Number.isFinite(f(x + h) - f(x - h)); i++) h /= 2;
  let previous: number[] = [];
  let best = NaN;
  let error = Infinity;
  for (let row = 0; row < rows; row++) {
    // The points that were really taken, so that rounding of x ± h does no harm.
    const right = x + h;
    const left = x - h;
    const current = [(f(right) - f(left)) / (right - left)];
    if (row === 0) best = current[0]!;
    let factor = shrink * shrink;
    for (let order = 1; order <= row; order++) {
      const finer = current[order - 1]!;
      const coarser = previous[order - 1]!;
      const value = (finer * factor - coarser) / (factor - 1);
      current.push(value);
      factor *= shrink * shrink;
      const estimate = Math.max(Math.abs(value - finer), Math.abs(value - coarser));
      if (estimate <= error) {
        error = estimate;
        best = value;
      }
    }
    // Higher orders have stopped helping: rounding has taken over.
    if (row > 0 && Math.abs(current[row]! - previous[row - 1]!) >= 2 * error) break;
    previous = current;
    h /= shrink;
  }
  return best;
}
