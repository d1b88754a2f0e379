/**
 * A number inside the sentence of a finding: `digits` significant digits, but never fewer than its integer part has, and
 * no trailing zeros (`numberText(19.8765, 3)` is `19.9`, `numberText(1234.5, 2)` is `1235`, `numberText(0.5, 3)` is
 * `0.5`). Messages have no uncertainty to round by; results are shown by `presentation`, which has one.
 */
export function numberText(value: number, digits: number): string {
  if (!Number.isFinite(value)) return 'no number';
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e15) return exponential(value, digits);
  const integerDigits = size < 1 ? 0 : Math.floor(Math.log10(size)) + 1;
  if (integerDigits >= digits) return withoutMinusZero(value.toFixed(0));
  return withoutMinusZero(trimmed(value.toPrecision(digits)));
}

/** `places` decimals, kept also where they are zeros: for two numbers of one sentence that are compared. */
export function decimalText(value: number, places: number): string {
  return Number.isFinite(value) ? withoutMinusZero(value.toFixed(places)) : 'no number';
}

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
