import { seeded, whiteNoise } from '../../support/random';

/** One part of a temperature programme: to a temperature at a rate (K/min), or a hold (s). */
export type Part = { readonly to: number; readonly rate: number } | { readonly hold: number };

export interface Programme {
  /** s, from 0. */
  readonly time: Float64Array;
  /** °C. */
  readonly temperature: Float64Array;
  /** First row of each part, and the number of rows. */
  readonly starts: readonly number[];
}

/** A programme run exactly, one reading every `step` s. */
export function programme(from: number, parts: readonly Part[], step = 1): Programme {
  const time: number[] = [];
  const temperature: number[] = [];
  const starts: number[] = [];
  let t = 0;
  let T = from;
  for (const part of parts) {
    starts.push(time.length);
    const duration = 'hold' in part ? part.hold : (60 * Math.abs(part.to - T)) / Math.abs(part.rate);
    const slope = 'hold' in part ? 0 : (part.to - T) / duration;
    for (let s = 0; s < duration - 1e-9; s += step) {
      time.push(t + s);
      temperature.push(T + slope * s);
    }
    t += duration;
    T += slope * duration;
  }
  starts.push(time.length);
  return { time: Float64Array.from(time), temperature: Float64Array.from(temperature), starts };
}

/** A signal over the rows of a programme, with white noise of a seed. */
export function signalOf(
  { time, temperature }: Programme,
  of: (T: number, t: number, row: number) => number,
  sigma = 0,
  seed = 1,
): Float64Array {
  const noise = whiteNoise(time.length, sigma, seeded(seed));
  return Float64Array.from(time, (t, i) => of(temperature[i], t, i) + noise[i]);
}

/** From 0 to 1 about `middle`, most of it within four widths. */
export function rise(x: number, middle: number, width: number): number {
  return 1 / (1 + Math.exp(-(x - middle) / width));
}

/** Height 1 at `middle`, standard deviation `width`. */
export function bell(x: number, middle: number, width: number): number {
  return Math.exp(-0.5 * ((x - middle) / width) ** 2);
}
