import { mergedParts } from './parts';
import type { Uncertain } from './uncertain';

/**
 * Effective degrees of freedom by the Welch-Satterthwaite formula, ν = u⁴ / Σ uᵢ⁴/νᵢ (JCGM 100, G.4.1), one term an
 * input; inputs of one group are one term, as their spread comes from the same observations (Willink, Metrologia 44
 * (2007) 340). null: many, which is so where no input with a finite number contributes. Not truncated.
 */
export function effectiveDof(x: Uncertain): number | null {
  const terms = new Map<string, { variance: number; dof: number | null }>();
  let variance = 0;
  for (const part of mergedParts(x.parts)) {
    const square = part.u * part.u;
    variance += square;
    const key = part.group === undefined ? `input ${part.input}` : `group ${part.group}`;
    const term = terms.get(key);
    if (term === undefined) terms.set(key, { variance: square, dof: part.dof });
    else term.variance += square;
  }
  // A single term is its own answer, without the rounding of two reciprocals.
  const [only] = terms.values();
  if (terms.size === 1 && only !== undefined) return only.variance > 0 ? only.dof : null;
  let sum = 0;
  for (const term of terms.values()) {
    if (term.dof !== null && term.variance > 0) sum += (term.variance / variance) ** 2 / term.dof;
  }
  return sum === 0 ? null : 1 / sum;
}
