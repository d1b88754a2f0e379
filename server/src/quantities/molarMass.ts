import { failed, success, type Outcome } from '../base/outcome';
import { readFormula, type FormulaFailure } from './formula';
import type { Part, Uncertain } from './uncertain';

/** Atomic weights by symbol; null: an element without a standard atomic weight. ± is a limit, not a standard uncertainty. */
export type AtomicWeights = ReadonlyMap<string, { readonly weight: number; readonly plusMinus: number } | null>;

export interface MolarMass {
  /** In g/mol, one influence `element X` for each element. */
  readonly value: Uncertain;
  /** In the order of the symbols: atoms in the formula and their mass in g/mol. */
  readonly elements: readonly { readonly symbol: string; readonly count: number; readonly mass: number }[];
}

/**
 * Molar mass of a formula (`readFormula` says what it may hold), in g/mol. The ± of an atomic weight is taken as the
 * half-width of a rectangular distribution, u = ±/√3 (JCGM 100, 4.3.7; van der Veen et al., Pure Appl. Chem. 93 (2021)
 * 629). The influence of an element is the same in every formula, so that ratios of molar masses correlate. The molar
 * mass constant is taken as 1 g/mol (it differs by 3.5e-10).
 */
export function molarMass(formula: string, weights: AtomicWeights): Outcome<MolarMass, FormulaFailure> {
  const read = readFormula(formula, (symbol) => {
    const known = weights.get(symbol);
    return known === undefined || known === null ? known : known.weight;
  });
  if (!read.ok) return read;
  const parts: Part[] = [];
  const elements: { symbol: string; count: number; mass: number }[] = [];
  let value = 0;
  for (const symbol of [...read.value.keys()].sort()) {
    const { weight, plusMinus } = weights.get(symbol)!;
    const count = read.value.get(symbol)!;
    value += count * weight;
    elements.push({ symbol, count, mass: count * weight });
    parts.push({ input: `element ${symbol}`, u: (count * plusMinus) / Math.sqrt(3), dof: null });
  }
  if (Number.isFinite(value)) return success({ value: { value, parts }, elements });
  return failed({ reason: 'subscript', offset: 0, length: formula.length, message: 'the counts are too large' });
}
