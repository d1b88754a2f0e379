/** sRGB, 0..255 each, and an opacity of 0..1. */
export interface Colour {
  readonly r: number;
  readonly g: number;
  readonly b: number;
  readonly a: number;
}

export const black: Colour = { r: 0, g: 0, b: 0, a: 1 };
export const white: Colour = { r: 255, g: 255, b: 255, a: 1 };

/** Reads what a style sheet computes to: `#rgb`, `#rrggbb(aa)`, `rgb(…)`, `rgba(…)`, `color(srgb …)`. Else null. */
export function colourFrom(text: string): Colour | null {
  const hex = /^#([0-9a-f]{3,8})$/i.exec(text.trim());
  if (hex !== null) return fromHex(hex[1]);
  const call = /^(rgba?|color)\(\s*(?:srgb\s+)?([^)]*)\)$/i.exec(text.trim());
  if (call === null) return null;
  const parts = call[2].split(/[\s,/]+/).filter((part) => part !== '');
  const numbers = parts.map((part) => (part.endsWith('%') ? Number(part.slice(0, -1)) / 100 : Number(part)));
  if (numbers.length < 3 || numbers.some((n) => !Number.isFinite(n))) return null;
  const whole = call[1].toLowerCase() === 'color' ? 255 : 1;
  return { r: numbers[0] * whole, g: numbers[1] * whole, b: numbers[2] * whole, a: numbers[3] ?? 1 };
}

function fromHex(digits: string): Colour | null {
  const short = digits.length <= 4;
  if (![3, 4, 6, 8].includes(digits.length)) return null;
  const at = (i: number): number => {
    const pair = short ? digits[i] + digits[i] : digits.slice(2 * i, 2 * i + 2);
    return pair === '' || pair === 'NaN' ? 255 : parseInt(pair, 16);
  };
  const hasAlpha = digits.length === 4 || digits.length === 8;
  return { r: at(0), g: at(1), b: at(2), a: hasAlpha ? at(3) / 255 : 1 };
}

/** For a canvas or a style property. */
export function css({ r, g, b, a }: Colour, opacity = 1): string {
  return `rgba(${Math.round(r)}, ${Math.round(g)}, ${Math.round(b)}, ${Math.round(1000 * a * opacity) / 1000})`;
}

/** `share` of `a`, the rest of `b`, both taken as opaque. */
export function mixed(a: Colour, b: Colour, share: number): Colour {
  const at = (x: number, y: number): number => share * x + (1 - share) * y;
  return { r: at(a.r, b.r), g: at(a.g, b.g), b: at(a.b, b.b), a: 1 };
}

/** A colour as it is seen on an opaque ground. */
export function over(colour: Colour, ground: Colour): Colour {
  return mixed(colour, ground, colour.a);
}

/** Relative luminance, WCAG 2.2 (definition of "relative luminance"). */
export function luminance(colour: Colour): number {
  const channel = (value: number): number => {
    const c = value / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(colour.r) + 0.7152 * channel(colour.g) + 0.0722 * channel(colour.b);
}

/** Contrast ratio of two opaque colours, 1..21, WCAG 2.2 (definition of "contrast ratio"). */
export function contrast(a: Colour, b: Colour): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

/**
 * The colour itself where it is distinct enough from the ground, else as little as needed nearer to black or white. A
 * theme may give any colour; what is drawn must be seen.
 */
export function distinct(colour: Colour, ground: Colour, ratio: number): Colour {
  const seen = over(colour, ground);
  if (contrast(seen, ground) >= ratio) return seen;
  const end = contrast(black, ground) > contrast(white, ground) ? black : white;
  let none = 0;
  let enough = 1;
  for (let k = 0; k < 20; k++) {
    const middle = (none + enough) / 2;
    if (contrast(mixed(end, seen, middle), ground) >= ratio) enough = middle;
    else none = middle;
  }
  // Whole steps of a channel are drawn, so a trace is added.
  return mixed(end, seen, Math.min(1, enough + 0.01));
}
