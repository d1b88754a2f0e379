/** The number inside a token of the text: `640` in `640 °C`, `−50` in `−50..20`. */
export interface WrittenNumber {
  /** Offsets within the token. */
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The sign as it is written, for the file's own style. */
  readonly minus: string;
  /** Smallest step its digits can tell: 1 for `640`, 0.1 for `640.0`, 10 for `6.4e2`. As a power of ten. */
  readonly place: number;
}

const form = /([-\u2212]?)[ \t]*(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d+))?/;

export function numberIn(token: string): WrittenNumber | null {
  const found = form.exec(token);
  if (found === null) return null;
  const [text, sign, , decimals = '', exponent = '0'] = found;
  return {
    start: found.index,
    end: found.index + text.length,
    text,
    minus: sign === '' ? '-' : sign,
    place: Number(exponent) - decimals.length,
  };
}

/**
 * The power of ten of the last digit to write: that of the text, or of a pixel where the pixel is coarser. `perPixel`: in
 * the unit of the text; null: a key or a typed number, that knows no pixels. 0.63 K a pixel tells tenths, 1.2 K ones.
 */
export function placeToWrite(own: number, perPixel: number | null): number {
  if (perPixel === null || !(perPixel > 0) || !Number.isFinite(perPixel)) return own;
  return Math.max(own, Math.floor(Math.log10(perPixel) + 1e-9));
}

/** A number with its last digit at a power of ten: 652.34 at -1 is `652.3`, at 1 `650`. No minus before a zero. */
export function writtenAt(value: number, place: number, minus = '-'): string {
  const digits = Math.max(0, -place);
  const step = 10 ** Math.max(0, place);
  const text = (place > 0 ? Math.round(value / step) * step : value).toFixed(Math.min(digits, 20));
  if (!text.startsWith('-')) return text;
  return /[1-9]/.test(text) ? minus + text.slice(1) : text.slice(1);
}

/** A number as it was typed: its own digits, without an exponent. */
export function writtenAsTyped(value: number, minus = '-'): string {
  const shortest = Number(value.toPrecision(12));
  const place = decimalsOf(shortest);
  return writtenAt(shortest, -place, minus);
}

function decimalsOf(value: number): number {
  for (let decimals = 0; decimals < 15; decimals++) if (Number(value.toFixed(decimals)) === value) return decimals;
  return 15;
}
