import { crucibles, findCrucible, type Crucible } from './crucibles';
import { findGas, type GasUse } from './gases';

/** The crucible goes beyond its working limit, or nearer to it than the margin. */
export interface TooHot {
  readonly crucible: Crucible;
  /** Working limit in the gas that decides, °C. */
  readonly limit: number;
  /** The words of that gas; null: none is known, and air is assumed. */
  readonly gas: string | null;
  /** How hot it gets there, °C. */
  readonly reached: number;
  /** Materials of the table that stand it. */
  readonly instead: readonly string[];
}

/**
 * Working limit of a crucible material in a gas, °C: that for air where the gas oxidises, is not stated (null) or is
 * not in the table, else that for inert gas. Null: the material is not in the table.
 */
export function workingLimit(crucibleWords: string, gasWords: string | null): number | null {
  const crucible = findCrucible(crucibleWords);
  return crucible === null ? null : limitOf(crucible, gasWords);
}

/**
 * Does the run come nearer to the working limit than `margin` (K), or pass it, in any of its gases? Null: it does not,
 * or the material is not in the table (`compatibility` reports that). Temperatures in °C. The limits are conservative
 * working values and the margin of 10 K is common practice.
 */
export function tooHot(
  crucibleWords: string,
  gases: readonly GasUse[],
  maxTemperature: number,
  margin = 10,
): TooHot | null {
  const crucible = findCrucible(crucibleWords);
  if (crucible === null) return null;
  const worst = beyond(crucible, gases, maxTemperature, margin);
  if (worst === null) return null;
  const instead = crucibles.filter((c) => !c.rare && beyond(c, gases, maxTemperature, margin) === null);
  return { crucible, ...worst, instead: instead.map((c) => c.name) };
}

/** The gas in which the limit is passed by most. */
function beyond(
  crucible: Crucible,
  gases: readonly GasUse[],
  maxTemperature: number,
  margin: number,
): { readonly limit: number; readonly gas: string | null; readonly reached: number } | null {
  const uses = gases.length === 0 ? [{ words: null, upTo: null }] : gases;
  const all = uses.map(({ words, upTo }) => ({
    limit: limitOf(crucible, words),
    gas: words,
    reached: Math.min(upTo ?? maxTemperature, maxTemperature),
  }));
  const passed = all.filter(({ limit, reached }) => reached > limit - margin);
  return passed.sort((a, b) => b.reached - b.limit - (a.reached - a.limit))[0] ?? null;
}

function limitOf(crucible: Crucible, gasWords: string | null): number {
  const gas = gasWords === null ? null : findGas(gasWords);
  return gas === null || gas.traits.includes('oxidising') ? crucible.limit.air : crucible.limit.inert;
}
