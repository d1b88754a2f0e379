import { failed, success, type Outcome } from '../base/outcome';

/** Why a text is no formula; offset and length in UTF-16 units of the text given. */
export interface FormulaFailure {
  readonly reason:
    'empty' | 'unknown-element' | 'group-name' | 'isotope' | 'charge' | 'bracket' | 'subscript' | 'text' | 'no-weight';
  readonly offset: number;
  readonly length: number;
  readonly message: string;
}

/** Atoms of each element in one formula unit, by symbol. */
export type ElementCounts = ReadonlyMap<string, number>;

/** Abbreviations of groups and ligands that are no element symbols. Ac, Ar, Pr and Ts are elements and are read so. */
const groupNames = new Set('Me Et Bu Ph Bz Bn Cy Cp Ms Tos Tf Mes Boc Fmoc Vi Np Oc Bpy Dm R X M L Q G'.split(' '));
const superscripts = /[\u2070\u00b9\u00b2\u00b3\u2074-\u207b]/;
/** Deeper nesting is no formula, and recursion must end. */
const deepest = 20;

interface Reading {
  readonly counts: Map<string, number>;
  readonly end: number;
}

/**
 * Reads a chemical formula (language.md 1): parts joined by `·` `*` `.`, each with an optional coefficient; elements and
 * groups in ( ) or [ ] with an optional subscript, a whole number or `0.`digits. A subscript is read first and a dot is
 * part of it only after a lone 0: `Fe0.95O` holds 0.95 Fe, `CaSO4.2H2O` is 4 O and then two waters, `CaSO4.0.5H2O` has
 * half a water. Subscript digits U+2080 to U+2089 count as digits; blanks are allowed around a joiner only.
 * Group names, isotopes and charges fail and are never guessed at: `13C` could be 13 C or an isotope.
 *
 * `weightOf`: atomic weight of an element by symbol, null where it has none, undefined where there is no such element.
 */
export function readFormula(
  text: string,
  weightOf: (symbol: string) => number | null | undefined,
): Outcome<ElementCounts, FormulaFailure> {
  // One for one, so that offsets stay.
  const source = text
    .replace(/[\u2080-\u2089]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
    .replace(/\u22c5/g, '·');
  if (source.trim() === '') return failed(failure('empty', 0, text.length, 'a formula is missing'));
  const reader = new FormulaReader(source, weightOf);
  const start = source.length - source.trimStart().length;
  const read = reader.parts(start, 0);
  if (!read.ok) return read;
  const end = source.trimEnd().length;
  if (read.value.end === end) return success(read.value.counts);
  return failed(reader.unexpected(read.value.end));
}

class FormulaReader {
  constructor(
    private readonly text: string,
    private readonly weightOf: (symbol: string) => number | null | undefined,
  ) {}

  /** part { joiner part } */
  parts(offset: number, depth: number): Outcome<Reading, FormulaFailure> {
    const counts = new Map<string, number>();
    let at = offset;
    for (;;) {
      const part = this.part(at, depth);
      if (!part.ok) return part;
      addCounts(counts, part.value.counts, 1);
      at = part.value.end;
      const joiner = this.match(/ *[·*.] */y, at);
      if (joiner === null) return success({ counts, end: at });
      at += joiner.length;
    }
  }

  /** [coefficient] { element or group, [subscript] } */
  private part(offset: number, depth: number): Outcome<Reading, FormulaFailure> {
    const counts = new Map<string, number>();
    const written = this.match(/\d+(?:\.\d+)?/y, offset) ?? '';
    const coefficient = written === '' ? 1 : Number(written);
    let at = offset + written.length;
    if (written !== '' && !(coefficient > 0)) {
      return failed(failure('subscript', offset, written.length, 'a coefficient of zero leaves nothing'));
    }
    const isotope = this.isotope(written, offset);
    if (isotope !== null) return failed(isotope);
    if (written !== '') at += (this.match(/ +(?=[A-Z([])/y, at) ?? '').length;
    const first = at;
    for (;;) {
      const unit = this.unit(at, depth);
      if (unit === null) break;
      if (!unit.ok) return unit;
      const subscript = this.subscript(unit.value.end);
      if (!subscript.ok) return subscript;
      addCounts(counts, unit.value.counts, subscript.value.count);
      at = subscript.value.end;
    }
    if (at === first) return failed(this.unexpected(at));
    for (const [symbol, count] of counts) counts.set(symbol, count * coefficient);
    return success({ counts, end: at });
  }

  /** An element or a bracketed group; null where neither begins. */
  private unit(offset: number, depth: number): Outcome<Reading, FormulaFailure> | null {
    const open = this.text[offset];
    if (open === '(' || open === '[') return this.group(offset, depth, open === '(' ? ')' : ']');
    const word = this.match(/[A-Z][a-z]*/y, offset);
    return word === null ? null : this.element(offset, word);
  }

  private group(offset: number, depth: number, close: string): Outcome<Reading, FormulaFailure> {
    if (depth >= deepest) return failed(failure('bracket', offset, 1, 'brackets are nested too deeply'));
    const inner = this.parts(offset + 1, depth + 1);
    if (!inner.ok) return inner;
    const { counts, end } = inner.value;
    if (this.text[end] === close) return success({ counts, end: end + 1 });
    if (end === this.text.trimEnd().length) return failed(failure('bracket', offset, 1, `"${close}" is missing`));
    return failed(this.unexpected(end));
  }

  private element(offset: number, word: string): Outcome<Reading, FormulaFailure> {
    for (const symbol of [word.slice(0, 2), word.slice(0, 1)]) {
      // A lower-case letter left over after a symbol belongs to it: `Phe` is no P followed by something.
      if (symbol.length === word.length && this.weightOf(symbol) !== undefined) {
        if (this.weightOf(symbol) === null) {
          const message = `${symbol} has no standard atomic weight: its isotopes vary with the source`;
          return failed(failure('no-weight', offset, symbol.length, message));
        }
        return success({ counts: new Map([[symbol, 1]]), end: offset + symbol.length });
      }
    }
    if (word === 'D' || word === 'T') {
      const message = `${word} is an isotope of hydrogen; standard atomic weights hold for natural elements only`;
      return failed(failure('isotope', offset, 1, message));
    }
    if (groupNames.has(word)) {
      const message = `"${word}" is the name of a group, not an element: write its atoms`;
      return failed(failure('group-name', offset, word.length, message));
    }
    return failed(failure('unknown-element', offset, word.length, `"${word}" is no element`));
  }

  private subscript(offset: number): Outcome<{ readonly count: number; readonly end: number }, FormulaFailure> {
    const digits = this.match(/0\.\d+|\d+/y, offset);
    if (digits === null) return success({ count: 1, end: offset });
    const count = Number(digits);
    if (count > 0 && (digits.startsWith('0.') || !digits.startsWith('0')) && Number.isFinite(count)) {
      return success({ count, end: offset + digits.length });
    }
    const message = `"${digits}" is no subscript: a whole number above zero, or 0.digits`;
    return failed(failure('subscript', offset, digits.length, message));
  }

  /**
   * A whole coefficient that is near the mass of the element right behind it may name an isotope. Hydrogen is left out,
   * for `2H2O` is two waters in every hand.
   */
  private isotope(coefficient: string, offset: number): FormulaFailure | null {
    const symbol = this.match(/[A-Z][a-z]?/y, offset + coefficient.length);
    if (symbol === null || !/^[1-9]\d*$/.test(coefficient) || symbol === 'H') return null;
    const known = [symbol, symbol.slice(0, 1)].find((s) => this.weightOf(s) !== undefined);
    const weight = known === undefined || known === 'H' ? null : this.weightOf(known);
    if (typeof weight !== 'number' || Math.abs(Number(coefficient) - weight) > 0.1 * weight + 1) return null;
    const length = coefficient.length + known!.length;
    const message = `${coefficient}${known!} may be an isotope, which has no place here, or ${coefficient} ${known!}: write ${known!}${coefficient} or put the rest in brackets`;
    return failure('isotope', offset, length, message);
  }

  /** What is wrong with the character at `offset`. */
  unexpected(offset: number): FormulaFailure {
    const character = this.text[offset];
    if (character === undefined) return failure('text', offset, 0, 'an element is missing at the end');
    if (superscripts.test(character) || character === '^') {
      const mass = this.match(/\^?[\u2070\u00b9\u00b2\u00b3\u2074-\u2079\d]+(?=[A-Z])/y, offset);
      return mass === null
        ? failure('charge', offset, 1, 'a charge has no place here: write the neutral formula')
        : failure('isotope', offset, mass.length, 'an isotope has no standard atomic weight: write the element');
    }
    if (/[-+\u2212]/.test(character)) {
      return failure('charge', offset, 1, 'a charge has no place here: write the neutral formula');
    }
    if (character === ')' || character === ']') {
      return failure('bracket', offset, 1, `"${character}" closes no bracket, or an empty one`);
    }
    if (/[a-z]/.test(character)) {
      return failure('unknown-element', offset, 1, 'the symbol of an element begins with a capital letter');
    }
    return failure('text', offset, 1, `"${character}" does not belong here in a formula`);
  }

  private match(pattern: RegExp, offset: number): string | null {
    pattern.lastIndex = offset;
    return pattern.exec(this.text)?.[0] ?? null;
  }
}

function addCounts(sum: Map<string, number>, more: ElementCounts, times: number): void {
  for (const [symbol, count] of more) sum.set(symbol, (sum.get(symbol) ?? 0) + count * times);
}

function failure(reason: FormulaFailure['reason'], offset: number, length: number, message: string): FormulaFailure {
  return { reason, offset, length, message };
}
