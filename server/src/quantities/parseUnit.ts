import { failed, success, type Outcome } from '../base/outcome';
import { dimensions } from './dimension';
import { scanUnit, type UnitFailure } from './scanUnit';
import type { Unit } from './unit';
import { unitSymbols } from './unitSymbols';

export type { UnitFailure } from './scanUnit';

/** The unit of a plain number: written `1`, and only where a unit is required (`given`, a column). */
export const unitOne: Unit = { text: '1', factor: 1, offset: 0, dimension: dimensions.none };

/** Spellings of the trade that the grammar does not have, lower case, and what to write. */
const meantBy: Readonly<Record<string, string>> = {
  sec: 's',
  second: 's',
  seconds: 's',
  minute: 'min',
  minutes: 'min',
  mins: 'min',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  ml: 'mL',
  ul: 'µL',
  l: 'L',
  cc: 'mL',
  deg: '°C',
  celsius: '°C',
  kelvin: 'K',
  percent: '%',
  pct: '%',
  gram: 'g',
  grams: 'g',
  joule: 'J',
  watt: 'W',
};

/**
 * Reads a whole text as one UNIT of the grammar in language.md 1, in any of its spellings.
 * `one`: also `1`, the unit of a plain number. The unit's `text` is its normal spelling (µ U+00B5, K, °C, superscripts).
 * Failures say where and what to write instead; blanks around the text are the caller's to cut.
 */
export function parseUnit(text: string, one: 'with 1' | 'without 1' = 'without 1'): Outcome<Unit, UnitFailure> {
  if (one === 'with 1' && text === '1') return success(unitOne);
  if (text === '') {
    return failed({ reason: 'empty', offset: 0, length: 0, message: 'a unit is missing', suggestion: null });
  }
  const found = scanUnit(text, 0);
  if (found !== null && found.failure !== null) return failed(found.failure);
  if (found !== null && found.end === text.length) return success(found.unit);
  return failed(diagnose(text, found?.end ?? 0));
}

function diagnose(text: string, from: number): UnitFailure {
  const blank = text.search(/\s/);
  if (blank >= 0) {
    const together = text.replace(/\s+/g, '');
    const inner = scanUnit(together, 0);
    const whole = inner !== null && inner.failure === null && inner.end === together.length ? inner.unit.text : null;
    return failure('blank', blank, 1, 'a unit has no blanks', whole);
  }
  if (text[from] === '*') {
    const dotted = text.replace(/\*/g, '·');
    const inner = scanUnit(dotted, 0);
    const whole = inner !== null && inner.failure === null && inner.end === dotted.length ? inner.unit.text : null;
    return failure('star', from, 1, 'outside brackets a product of units is written with "·"', whole);
  }
  for (const word of text.matchAll(/[\p{L}\p{M}\p{Nd}_%\u00b0]+/gu)) {
    // Digits behind the first word are an exponent.
    if (word.index > 0 && /^\d+$/.test(word[0])) continue;
    if (scanUnit(word[0], 0)?.end === word[0].length) continue;
    const suggestion = suggestionFor(word[0]);
    const hint = suggestion === null ? '' : `; ${suggestion} is`;
    return failure('unknown-symbol', word.index, word[0].length, `"${word[0]}" is no unit${hint}`, suggestion);
  }
  return failure('text-left', from, text.length - from, `"${text.slice(from)}" does not belong to a unit`, null);
}

function suggestionFor(word: string): string | null {
  const lower = word.toLowerCase();
  const trade = Object.hasOwn(meantBy, lower) ? meantBy[lower] : undefined;
  if (trade !== undefined) return trade;
  const powered = /^([A-Za-zµμ]+)(-?\d)$/.exec(word);
  if (powered !== null && unitSymbols.has(powered[1]!)) return `${powered[1]!}^${powered[2]!}`;
  const sameLetters = [...unitSymbols.keys()].filter((symbol) => symbol.toLowerCase() === lower);
  return sameLetters.length === 1 ? sameLetters[0]! : null;
}

function failure(
  reason: UnitFailure['reason'],
  offset: number,
  length: number,
  message: string,
  suggestion: string | null,
): UnitFailure {
  return { reason, offset, length, message, suggestion };
}
