import type { Range } from '../../protocol/view';

/** A mark of an axis: the value it stands at, and the number written beside it. */
export interface Tick {
  readonly value: number;
  readonly text: string;
}

/**
 * Marks of an axis at 1, 2 or 5 times a power of ten, at most `most` steps of them, with as many decimals as the step has.
 * `per`: values of the axis in one of what is written (60 where seconds are labelled in minutes).
 */
export function ticks(range: Range, most: number, per = 1): Tick[] {
  const [from, to] = [range.from / per, range.to / per];
  const span = to - from;
  if (!(span > 0) || !Number.isFinite(span) || !(most >= 1)) return [];
  const { step, place } = niceStep(span / most);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  // Where a step is lost in the digits of the value there is nothing to tell apart.
  if (!(last - first <= 2 * most + 2) || from + step === from) return [];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const value = (first + i) * step;
    return { value: value * per, text: tickText(value, place) };
  });
}

/** The smallest of 1, 2, 5 times a power of ten that is at least `least`, and the power of ten of its last digit. */
export function niceStep(least: number): { readonly step: number; readonly place: number } {
  const power = Math.floor(Math.log10(least) + 1e-12);
  const lead = [1, 2, 5].find((n) => n * 10 ** power >= least * (1 - 1e-9));
  return lead === undefined
    ? { step: 10 ** (power + 1), place: power + 1 }
    : { step: lead * 10 ** power, place: power };
}

/** Large and small numbers share their power of ten; a minus sign is one, and a zero has none. */
function tickText(value: number, place: number): string {
  const isPlain = place >= -6 && Math.abs(value) < 1e7;
  const text = isPlain ? value.toFixed(Math.max(0, -place)) : exponential(value, place);
  return /[1-9]/.test(text) ? text.replace(/-/g, '\u2212') : text.replace('-', '');
}

function exponential(value: number, place: number): string {
  if (value === 0) return '0';
  const digits = Math.max(0, Math.floor(Math.log10(Math.abs(value)) + 1e-9) - place);
  const [mantissa, exponent] = value.toExponential(digits).split('e');
  return `${mantissa}e${Number(exponent)}`;
}
