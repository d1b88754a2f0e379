import { overDimension, timesDimension, dimensions } from './dimension';
import type { Dimension, Unit } from './unit';
import { symbolFor, unitSymbols, type UnitSymbol } from './unitSymbols';

/** Why a text is no unit; offset and length count from the start of the text scanned. */
export interface UnitFailure {
  readonly reason: 'empty' | 'unknown-symbol' | 'second-slash' | 'exponent' | 'blank' | 'star' | 'text-left';
  readonly offset: number;
  readonly length: number;
  readonly message: string;
  /** The spelling that was probably meant; null where there is no safe guess. */
  readonly suggestion: string | null;
}

/** The longest unit at a place. `failure`: what stands there is meant as a unit and is a wrong one. */
export interface ScannedUnit {
  readonly unit: Unit;
  readonly end: number;
  readonly failure: UnitFailure | null;
}

interface Power {
  readonly symbol: UnitSymbol;
  readonly exponent: number;
  readonly end: number;
  readonly failure: UnitFailure | null;
}

interface Product {
  readonly powers: readonly Power[];
  readonly end: number;
}

const wordAt = /%|\u00b0C|\u2103|[A-Za-z\u00b5\u03bc\u212a]+/y;
const goesOn = /[\p{L}\p{M}\p{Nd}_]/uy;
const typedExponent = /\^([-\u2212]?)(\d+)(?!\.\d)/y;
const raisedExponent = /(\u207b?)([\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+)/y;
const raisedDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** Beyond this a factor of the grammar's prefixes can leave the range of a double; no unit of the trade comes near. */
const largestExponent = 9;

/**
 * The longest match of the UNIT grammar (language.md 1) at `offset`: whole words, no blanks, one `/`. Null where no
 * unit stands there. A second `/` with a unit behind it (`J/g/K`) and an exponent that makes no sense are reported with
 * the match, since cutting the unit short there would change what the line means.
 */
export function scanUnit(text: string, offset: number): ScannedUnit | null {
  const perOne = text.startsWith('1/', offset);
  const above: Product | null = perOne ? { powers: [], end: offset + 1 } : scanProduct(text, offset, false);
  if (above === null) return null;
  const below = text[above.end] === '/' ? scanBelow(text, above.end + 1) : null;
  if (below === null) return perOne ? null : result(text, offset, above, { powers: [], end: above.end });
  return result(text, offset, above, below);
}

function result(text: string, offset: number, above: Product, below: Product): ScannedUnit {
  const unit = buildUnit(above.powers, below.powers);
  const failure = [...above.powers, ...below.powers].find((p) => p.failure !== null)?.failure ?? null;
  const again = below.powers.length > 0 && text[below.end] === '/' ? scanBelow(text, below.end + 1) : null;
  if (again === null) return { unit, end: below.end, failure };
  const meant = buildUnit(above.powers, [...below.powers, ...again.powers]);
  return {
    unit: meant,
    end: again.end,
    failure: failure ?? {
      reason: 'second-slash',
      offset: below.end,
      length: again.end - below.end,
      message: `a unit has one "/": write ${meant.text} for ${text.slice(offset, again.end)}`,
      suggestion: meant.text,
    },
  };
}

function scanBelow(text: string, offset: number): Product | null {
  if (text[offset] !== '(') {
    const power = scanPower(text, offset);
    return power === null ? null : { powers: [power], end: power.end };
  }
  const product = scanProduct(text, offset + 1, true);
  return product !== null && text[product.end] === ')' ? { powers: product.powers, end: product.end + 1 } : null;
}

function scanProduct(text: string, offset: number, inBrackets: boolean): Product | null {
  const first = scanPower(text, offset);
  if (first === null) return null;
  const powers = [first];
  let end = first.end;
  while (text[end] === '·' || (inBrackets && text[end] === '*')) {
    const next = scanPower(text, end + 1);
    if (next === null) break;
    powers.push(next);
    end = next.end;
  }
  return { powers, end };
}

function scanPower(text: string, offset: number): Power | null {
  const word = match(wordAt, text, offset)?.[0];
  if (word === undefined) return null;
  const symbol = symbolFor(word);
  const end = offset + word.length;
  if (symbol === null || (word !== '%' && match(goesOn, text, end) !== null)) return null;
  const raised = exponentAt(text, end);
  if (raised === null) return { symbol, exponent: 1, end, failure: null };
  const wrong = raised.exponent === 0 || Math.abs(raised.exponent) > largestExponent;
  return {
    symbol,
    exponent: wrong ? 1 : raised.exponent,
    end: raised.end,
    failure: wrong
      ? {
          reason: 'exponent',
          offset: end,
          length: raised.end - end,
          message: `an exponent of a unit lies between 1 and ${largestExponent}, or -1 and -${largestExponent}`,
          suggestion: null,
        }
      : null,
  };
}

function exponentAt(text: string, offset: number): { readonly exponent: number; readonly end: number } | null {
  const typed = match(typedExponent, text, offset);
  if (typed !== null && match(goesOn, text, offset + typed[0].length) === null) {
    return { exponent: signed(typed[1]!, typed[2]!), end: offset + typed[0].length };
  }
  const raised = match(raisedExponent, text, offset);
  if (raised === null) return null;
  const digits = [...raised[2]!].map((digit) => raisedDigits.indexOf(digit)).join('');
  return { exponent: signed(raised[1]!, digits), end: offset + raised[0].length };
}

function signed(sign: string, digits: string): number {
  const size = Number(digits);
  return sign === '' || size === 0 ? size : -size;
}

function match(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** °C in a product or quotient means K: only a unit that is one bare °C is a point on a scale. */
function buildUnit(above: readonly Power[], below: readonly Power[]): Unit {
  const alone = above.length === 1 && below.length === 0 && above[0]!.exponent === 1;
  const usable = (p: Power): Power =>
    p.symbol.offset === 0 || alone ? p : { ...p, symbol: unitSymbols.get('K') ?? p.symbol };
  const top = above.map(usable);
  const bottom = below.map(usable);
  let factor = 1;
  let dimension: Dimension = dimensions.none;
  for (const p of top) {
    factor *= p.symbol.factor ** p.exponent;
    for (let i = 0; i < Math.abs(p.exponent); i++) dimension = raise(dimension, p.symbol.dimension, p.exponent > 0);
  }
  for (const p of bottom) {
    factor /= p.symbol.factor ** p.exponent;
    for (let i = 0; i < Math.abs(p.exponent); i++) dimension = raise(dimension, p.symbol.dimension, p.exponent < 0);
  }
  return { text: spelling(top, bottom), factor, offset: alone ? top[0]!.symbol.offset : 0, dimension };
}

function raise(dimension: Dimension, by: Dimension, up: boolean): Dimension {
  return up ? timesDimension(dimension, by) : overDimension(dimension, by);
}

function spelling(above: readonly Power[], below: readonly Power[]): string {
  const product = (powers: readonly Power[]): string =>
    powers.map((p) => p.symbol.text + (p.exponent === 1 ? '' : superscript(p.exponent))).join('·');
  const top = above.length === 0 ? '1' : product(above);
  if (below.length === 0) return top;
  return below.length === 1 ? `${top}/${product(below)}` : `${top}/(${product(below)})`;
}

/** `-2` as `⁻²`. */
export function superscript(exponent: number): string {
  const digits = [...String(Math.abs(exponent))].map((digit) => raisedDigits[Number(digit)] ?? '').join('');
  return (exponent < 0 ? '⁻' : '') + digits;
}
