/**
 * A number inside the sentence of a finding: at most `digits` digits after the point, no trailing zeros
 * (`numberText(742.318, 1)` is `742.3`, `numberText(10, 1)` is `10`). What would vanish keeps one significant digit
 * (`numberText(0.004, 2)` is `0.004`). Messages have no uncertainty to round by; results are shown by `presentation`,
 * which has one.
 */
export function numberText(value: number, digits: number): string {
  if (!Number.isFinite(value)) return noNumber;
  if (value !== 0 && Math.abs(value) < 0.5 * 10 ** -digits) return significantText(value, 1);
  if (Math.abs(value) >= 1e15) return significantText(value, 6);
  return withoutMinusZero(trimmed(value.toFixed(digits)));
}

/** `digits` significant digits, never fewer than the integer part has, no trailing zeros: for sizes not known before. */
export function significantText(value: number, digits: number): string {
  if (!Number.isFinite(value)) return noNumber;
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e15) return exponential(value, digits);
  const integerDigits = size < 1 ? 0 : Math.floor(Math.log10(size)) + 1;
  if (integerDigits >= digits) return withoutMinusZero(value.toFixed(0));
  return trimmed(value.toPrecision(digits));
}

/** Exactly `places` digits after the point: for two numbers of one sentence that are compared. */
export function decimalText(value: number, places: number): string {
  return Number.isFinite(value) ? withoutMinusZero(value.toFixed(places)) : noNumber;
}

const noNumber = 'no number';

function exponential(value: number, digits: number): string {
  const [mantissa, exponent] = value.toExponential(Math.max(0, digits - 1)).split('e');
  return `${trimmed(mantissa)}e${exponent.replace('+', '')}`;
}

function trimmed(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function withoutMinusZero(text: string): string {
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}
