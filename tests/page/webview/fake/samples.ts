import type { Abscissa } from '../../../../server/src/protocol/view';
import type { FakePart } from './signals';

export interface Drawn {
  readonly x: number[];
  readonly y: number[];
  readonly complete: boolean;
}

/**
 * Samples of one part between two places, at most four a pixel column (first, least, greatest, last), ascending, with one
 * neighbour on either side; all where there are no more. Written the plain way, apart from the program's own.
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
  const order = ascending(xs);
  const all: number[] = [];
  let before: number[] = [];
  let after: number[] = [];
  for (const i of order) {
    if (xs[i] < from) before = [i];
    else if (xs[i] <= to) all.push(i);
    else {
      after = [i];
      break;
    }
  }
  const answer = (inside: readonly number[], complete: boolean): Drawn => {
    const kept = [...before, ...inside, ...after];
    return { x: kept.map((i) => xs[i]), y: kept.map((i) => ys[i]), complete };
  };
  if (all.length <= 4 * pixels) return answer(all, true);
  const columns = new Map<number, number[]>();
  for (const i of all) {
    const column = Math.min(pixels - 1, Math.floor(((xs[i] - from) / (to - from)) * pixels));
    const list = columns.get(column);
    if (list === undefined) columns.set(column, [i]);
    else list.push(i);
  }
  const kept = [...columns.values()].flatMap((column) => {
    const least = column.reduce((a, b) => (ys[b] < ys[a] ? b : a));
    const greatest = column.reduce((a, b) => (ys[b] > ys[a] ? b : a));
    const wanted = new Set([column[0], least, greatest, column[column.length - 1]]);
    return column.filter((i) => wanted.has(i));
  });
  return answer(kept, false);
}

const orders = new WeakMap<Float64Array, number[]>();

/** Places of the samples in ascending order, found once. */
export function ascending(xs: Float64Array): number[] {
  let order = orders.get(xs);
  if (order === undefined) {
    order = [...xs.keys()].sort((a, b) => xs[a] - xs[b]);
    orders.set(xs, order);
  }
  return order;
}

/** Little-endian Float64 in base64. */
export function base64(values: readonly number[]): string {
  const view = new DataView(new ArrayBuffer(8 * values.length));
  values.forEach((value, i) => view.setFloat64(8 * i, value, true));
  let text = '';
  for (const byte of new Uint8Array(view.buffer)) text += String.fromCharCode(byte);
  return btoa(text);
}
