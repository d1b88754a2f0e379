/** What the text of one cell says: a finite number, nothing, or something else. */
export type CellText = number | 'empty' | 'not a number';

const withPoint = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const withComma = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/;

/**
 * The meaning of a cell, and the reference for the byte scanner: blanks around it dropped, then a decimal literal with
 * the decimal sign of the file, converted by `Number` (correctly rounded, ECMA-262 StringToNumber). The other decimal
 * sign, thousands separators, hexadecimal, `Infinity` and numbers beyond the doubles are not numbers: they are
 * reported, never guessed.
 */
export function cellText(text: string, decimal: '.' | ','): CellText {
  const trimmed = text.trim();
  if (trimmed === '') return 'empty';
  if (!(decimal === '.' ? withPoint : withComma).test(trimmed)) return 'not a number';
  const value = Number(decimal === ',' ? trimmed.replace(',', '.') : trimmed);
  return Number.isFinite(value) ? value : 'not a number';
}
