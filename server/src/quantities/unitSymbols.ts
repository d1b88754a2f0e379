import { dimensions } from './dimension';
import type { Dimension } from './unit';

/** One SYMBOL of the UNIT grammar: what it is worth in SI. */
export interface UnitSymbol {
  /** Normal spelling. */
  readonly text: string;
  readonly factor: number;
  readonly offset: number;
  readonly dimension: Dimension;
}

/** Symbols that take no prefix. °C carries the offset of the Celsius scale (SI Brochure, 9th ed., 2.3.1). */
export const plain: readonly UnitSymbol[] = [
  { text: '%', factor: 0.01, offset: 0, dimension: dimensions.none },
  { text: 'ppm', factor: 1e-6, offset: 0, dimension: dimensions.none },
  { text: '°C', factor: 1, offset: 273.15, dimension: dimensions.temperature },
  { text: 'min', factor: 60, offset: 0, dimension: dimensions.time },
  { text: 'h', factor: 3600, offset: 0, dimension: dimensions.time },
];

/** Symbols that take one of the prefixes; the gram, not the kilogram, so that `kg` is k·g. */
export const prefixed: readonly { readonly text: string; readonly scale: number; readonly dimension: Dimension }[] = [
  { text: 'g', scale: -3, dimension: dimensions.mass },
  { text: 'm', scale: 0, dimension: dimensions.length },
  { text: 's', scale: 0, dimension: dimensions.time },
  { text: 'K', scale: 0, dimension: dimensions.temperature },
  { text: 'A', scale: 0, dimension: dimensions.current },
  { text: 'V', scale: 0, dimension: dimensions.voltage },
  { text: 'W', scale: 0, dimension: dimensions.power },
  { text: 'J', scale: 0, dimension: dimensions.energy },
  { text: 'L', scale: -3, dimension: dimensions.volume },
  { text: 'mol', scale: 0, dimension: dimensions.amount },
  { text: 'Pa', scale: 0, dimension: dimensions.pressure },
  { text: 'bar', scale: 5, dimension: dimensions.pressure },
];

/** SI prefixes of the grammar as powers of ten. */
export const prefixes: readonly (readonly [string, number])[] = [
  ['', 0],
  ['n', -9],
  ['µ', -6],
  ['m', -3],
  ['c', -2],
  ['k', 3],
  ['M', 6],
];

// Factors are written as decimal literals: 10 ** -3 * 10 ** -3 is not the double nearest to 1e-6.
function powerOfTen(exponent: number): number {
  return Number(`1e${exponent}`);
}

function table(): ReadonlyMap<string, UnitSymbol> {
  const symbols = new Map<string, UnitSymbol>();
  for (const { text, scale, dimension } of prefixed) {
    for (const [prefix, power] of prefixes) {
      const spelled = prefix + text;
      symbols.set(spelled, { text: spelled, factor: powerOfTen(scale + power), offset: 0, dimension });
    }
  }
  for (const symbol of plain) symbols.set(symbol.text, symbol);
  return symbols;
}

/** By normal spelling. No two entries collide: `min`, `mol`, `Pa` are no prefix followed by a symbol. */
export const unitSymbols = table();

/** What a keyboard writes instead: language.md 1. */
export const typedSymbols: Readonly<Record<string, string>> = { degC: '°C', C: '°C' };

/**
 * The same characters in other code points: U+03BC and U+00B5, U+212A and K, U+2103 and °C; `u` for µ before a symbol.
 * Null where it is no symbol of the grammar.
 */
export function symbolFor(word: string): UnitSymbol | null {
  const oneForm = word
    .replace(/\u03bc/g, 'µ')
    .replace(/\u212a/g, 'K')
    .replace(/\u2103/g, '°C');
  const known = unitSymbols.get(oneForm) ?? unitSymbols.get(typedSymbols[oneForm] ?? '');
  if (known !== undefined) return known;
  return oneForm.length > 1 && oneForm.startsWith('u') ? (unitSymbols.get(`µ${oneForm.slice(1)}`) ?? null) : null;
}
