import type { Amount } from '../language/model';
import { numberText } from '../findings/numberText';
import type { Placed } from './outcome';
import { isTime, secondsOf } from './place';

/** A width as the statement gives it, or its default, in seconds at each edge of the window. */
export interface Width {
  readonly from: number;
  readonly to: number;
  /** For the method line: `10 K`, `60 s`. */
  readonly text: string;
}

export interface DefaultWidth {
  readonly kelvin: number;
  readonly seconds: number;
}

/** language.md 2: `span` 10 K or 60 s in a hold (glass 15 K), `smooth` 5 K or 30 s, `over` 2 K or 30 s. */
export const defaults = {
  span: { kelvin: 10, seconds: 60 },
  glassSpan: { kelvin: 15, seconds: 60 },
  smooth: { kelvin: 5, seconds: 30 },
  over: { kelvin: 2, seconds: 30 },
  departure: { kelvin: 3, seconds: 18 },
} satisfies Record<string, DefaultWidth>;

export function widthOf(placed: Placed, written: Amount | null, fallback: DefaultWidth): Width {
  const per = placed.secondsPerKelvin;
  if (written !== null && isTime(written)) {
    const seconds = secondsOf(written);
    return { from: seconds, to: seconds, text: written.text };
  }
  if (per === null) {
    // A width in K means nothing where the temperature stands still.
    return { from: fallback.seconds, to: fallback.seconds, text: `${numberText(fallback.seconds, 0)} s` };
  }
  const kelvin = written === null ? fallback.kelvin : written.value * (written.unit?.factor ?? 1);
  return {
    from: kelvin * per.from,
    to: kelvin * per.to,
    text: written === null ? `${numberText(fallback.kelvin, 0)} K` : written.text,
  };
}

export interface Smoothing {
  readonly seconds: number | null;
  readonly text: string;
}

/** Full width of the derivative's window in seconds; null where smoothing is switched off. */
export function smoothing(placed: Placed, written: Amount | 'none' | null): Smoothing {
  if (written === 'none') return { seconds: null, text: 'derivative not smoothed' };
  const width = widthOf(placed, written, defaults.smooth);
  return { seconds: (width.from + width.to) / 2, text: `derivative over ${width.text}` };
}

/** The width really used, where the analysis narrowed it to what a narrow effect bears. */
export function narrowedText(placed: Placed, asked: Smoothing, used: number | null): string {
  if (asked.seconds === null || used === null || used >= 0.999 * asked.seconds) return asked.text;
  const per = placed.secondsPerKelvin;
  const width = per === null ? `${numberText(used, 1)} s` : `${numberText(used / ((per.from + per.to) / 2), 2)} K`;
  return `derivative over ${width}, narrowed to the effect`;
}
