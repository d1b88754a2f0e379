import type { Amount, RangeOf } from '../model';
import { normalNumber } from '../syntax/numbers';

/** How numbers are written: as they stand in the text, or in their one normal text. */
export type Digits = 'written' | 'normal';

const numbers = /\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/g;

export function writeAmount(amount: Amount, digits: Digits): string {
  const { value, unit } = split(amount);
  const written = digits === 'written' ? value : value.replace(numbers, normalNumber);
  // Minus nothing is nothing.
  const signed = digits === 'normal' && /^-0(?: |$)/.test(written) ? written.slice(1) : written;
  return unit === '' ? signed : `${signed} ${unit}`;
}

/** A number that is kept as a value only, in its normal text. */
export function writeNumber(value: number): string {
  const digits = normalNumber(String(Math.abs(value)));
  return value < 0 ? `-${digits}` : digits;
}

/** A unit that both ends have is written once. */
export function writeRange(range: RangeOf, digits: Digits): string {
  const shared = range.from.unit !== null && range.from.unit.text === range.to.unit?.text;
  const from = shared
    ? writeAmount({ ...range.from, unit: null, text: split(range.from).value }, digits)
    : writeAmount(range.from, digits);
  return `${from}..${writeAmount(range.to, digits)}`;
}

/**
 * The text of an amount without its unit at the end. A unit within, as in `20 mg ± 10 µg`, stays: digits of a unit
 * (`1/min`) have no zeros to lose.
 */
function split(amount: Amount): { readonly value: string; readonly unit: string } {
  const unit = amount.unit?.text ?? '';
  if (unit !== '' && amount.text.endsWith(` ${unit}`)) {
    return { value: amount.text.slice(0, -unit.length - 1), unit };
  }
  return { value: amount.text, unit: '' };
}
