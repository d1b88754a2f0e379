import { significantText } from '../findings/numberText';

/** A number and its uncertainty as digit strings: `.` as decimal point, no grouping, no locale. */
export interface RoundedNumber {
  readonly value: string;
  /** null: none to print, for it is exact or unknown. */
  readonly uncertainty: string | null;
}

/** Digits of an exact number, and of one whose uncertainty is unknown. */
const exactDigits = 6;
const unknownDigits = 4;

/**
 * Rounds the uncertainty to its second significant digit and the value to the same decimal place (JCGM 100, 7.2.6):
 * 50000838 and 31.66 give `50000838` and `32`, 14.8 and 0.04 give `14.800` and `0.040`. Very large and very small
 * numbers share one power of ten: `1.73e-5`, `0.18e-5`. `u`: any expanded or standard uncertainty in the unit of the
 * value, 0 or more; 0 (exact) leaves up to 6, null (unknown) up to 4 significant digits, without zeros at the end; whole digits are
 * never cut. Value and u are finite.
 */
export function roundToUncertainty(value: number, u: number | null): RoundedNumber {
  if (u === null || !(u > 0) || !Number.isFinite(u)) {
    return { value: significantText(value, u === 0 ? exactDigits : unknownDigits), uncertainty: null };
  }
  // toExponential rounds the digits and carries: 0.0996 becomes 1.0e-1.
  const place = exponentOf(u.toExponential(1)) - 1;
  const size = Math.max(Math.abs(value), u);
  const power = place > 3 || size >= 1e15 || size < 1e-4 ? exponentOf(size.toExponential(1)) : 0;
  const decimals = power - place;
  return { value: atPlace(value, power, decimals), uncertainty: atPlace(u, power, decimals) };
}

/** `14.800 ± 0.040 %`: value, standard uncertainty, unit; `±` is left out where there is no uncertainty to print. */
export function formatWithUncertainty(value: number, u: number | null, unit = ''): string {
  const rounded = roundToUncertainty(value, u);
  const number = rounded.uncertainty === null ? rounded.value : `${rounded.value} ± ${rounded.uncertainty}`;
  return unit === '' || unit === '1' ? number : `${number} ${unit}`;
}

/** `value` in units of 10^power with so many decimals (fewer than none: zeros in front of the point), and `e` + power. */
function atPlace(value: number, power: number, decimals: number): string {
  if (decimals < 0) {
    const step = 10 ** -decimals;
    return signed(String(Math.round(value / step) * step));
  }
  // Shifting the point in the text of the number, not by a multiplication, adds no rounding of its own.
  const shifted = power === 0 ? value : shiftedBy(value, -power);
  const digits = signed(shifted.toFixed(Math.min(decimals, 100)));
  return power === 0 ? digits : `${digits}e${power}`;
}

function shiftedBy(value: number, power: number): number {
  const text = value.toExponential();
  return Number(`${text.slice(0, text.indexOf('e'))}e${exponentOf(text) + power}`);
}

function exponentOf(exponential: string): number {
  return Number(exponential.slice(exponential.indexOf('e') + 1));
}

/** No minus before a zero. */
function signed(digits: string): string {
  return /^-[0.]*$/.test(digits) ? digits.slice(1) : digits;
}
