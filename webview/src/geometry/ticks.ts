import type { Range } from '../../../server/src/protocol/view';

export interface Tick {
  readonly value: number;
  readonly text: string;
}

/**
 * Marks of an axis at 1, 2 or 5 times a power of ten, at most `most` of them, each with the decimals the step needs.
 * `per`: values of the axis in one unit of what is written (60 for an axis in s that is labelled in min).
 */
export function ticks(range: Range, most: number, per = 1): Tick[] {
  const from = range.from / per;
  const to = range.to / per;
  const step = niceStep((to - from) / Math.max(1, most));
  if (!Number.isFinite(step) || step <= 0) return [];
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const found: Tick[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + step * 1e-9; k++) {
    found.push({ value: k * step * per, text: written(k * step, decimals) });
    if (found.length > 200) break;
  }
  return found;
}

/** The smallest of 1, 2, 5 times a power of ten that is at least `step`. */
export function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const lead = step / power;
  const nice = [1, 2, 5].find((n) => lead <= n * (1 + 1e-9)) ?? 10;
  return nice * power;
}

function written(value: number, decimals: number): string {
  const text = value.toFixed(Math.min(decimals, 12));
  // A true minus, and none before zero.
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
