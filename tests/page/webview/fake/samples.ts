import type { Abscissa } from '../../../../server/src/protocol/view';
import type { FakePart } from './signals';

export interface Drawn {
  readonly x: number[];
  readonly y: number[];
  readonly complete: boolean;
}

/**
 * Samples of one part between two places, at most four a pixel column (first, least, greatest, last), ascending; all
 * where there are no more. Written the plain way, apart from the program's own.
 */
export function drawnSamples(
  part: FakePart,
  lane: string,
  abscissa: Abscissa,
  from: number,
  to: number,
  pixels: number,
): Drawn {
  const xs = abscissa === 'time' ? part.time : part.temperature;
  const ys = part.lanes[lane];
  const all = [...xs.keys()].filter((i) => xs[i] >= from && xs[i] <= to).sort((a, b) => xs[a] - xs[b]);
  if (all.length <= 4 * pixels) return { x: all.map((i) => xs[i]), y: all.map((i) => ys[i]), complete: true };
  const columns = new Map<number, number[]>();
  for (const i of all) {
    const column = Math.min(pixels - 1, Math.floor(((xs[i] - from) / (to - from)) * pixels));
    columns.set(column, [...(columns.get(column) ?? []), i]);
  }
  const kept = [...columns.values()].flatMap((column) => {
    const least = column.reduce((a, b) => (ys[b] < ys[a] ? b : a));
    const greatest = column.reduce((a, b) => (ys[b] > ys[a] ? b : a));
    const wanted = new Set([column[0], least, greatest, column[column.length - 1]]);
    return column.filter((i) => wanted.has(i));
  });
  return { x: kept.map((i) => xs[i]), y: kept.map((i) => ys[i]), complete: false };
}

/** Little-endian Float64 in base64. */
export function base64(values: readonly number[]): string {
  const view = new DataView(new ArrayBuffer(8 * values.length));
  values.forEach((value, i) => view.setFloat64(8 * i, value, true));
  let text = '';
  for (const byte of new Uint8Array(view.buffer)) text += String.fromCharCode(byte);
  return btoa(text);
}
