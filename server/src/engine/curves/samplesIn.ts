import type { Ascending } from './ascending';
import { ExtremeSearch, type DrawnValues, type ExtremePyramid } from './extremePyramid';

/** What is drawn of one curve: pairs of original samples, `x` ascending. */
export interface Samples {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly count: number;
  /** Every sample of the range is in it. */
  readonly complete: boolean;
}

export const noSamples: Samples = { x: new Float64Array(0), y: new Float64Array(0), count: 0, complete: true };

/** Samples drawn in one pixel column at most: the first, the least, the greatest, the last. */
const PER_COLUMN = 4;

/** Samples along an abscissa with what finds their extremes. */
export interface Drawn {
  readonly axis: Ascending;
  readonly values: Float64Array;
  /** Made when it is first needed: a range that is drawn whole needs none. */
  readonly pyramid: () => ExtremePyramid;
}

/**
 * The samples of a curve between `from` and `to` (both included) for so many pixel columns: in each column the first, the
 * least, the greatest and the last, in their order, so that the line drawn covers the same pixels as the line through
 * all. Every one is a sample of the file with its own x, times `factor`; nothing is averaged or moved. One neighbour on
 * each side is added, so that lines reach the edge of the picture. All samples where the range holds no more than four
 * a column. O(columns · log n).
 */
export function samplesIn(drawn: Drawn, from: number, to: number, pixels: number, factor: number): Samples {
  const { x, order } = drawn.axis;
  const n = x.length;
  if (n === 0 || !(to >= from)) return noSamples;
  const columns = Math.max(1, Math.floor(pixels));
  const first = firstNotBelow(x, from, 0, n);
  const last = firstAbove(x, to, first, n);
  const start = Math.max(0, first - 1);
  const end = Math.min(n, last + 1);
  const values: DrawnValues = { values: drawn.values, order, length: n };
  const inside = last - first;
  if (inside <= PER_COLUMN * columns) return taken(values, x, placesBetween(start, end), end - start, factor, true);
  const places = new Uint32Array(PER_COLUMN * columns + 2);
  let count = 0;
  if (start < first) places[count++] = start;
  const before = count;
  const search = new ExtremeSearch(drawn.pyramid(), values);
  const width = (to - from) / columns;
  for (let column = 0, a = first; column < columns; column++) {
    const b = column === columns - 1 ? last : firstNotBelow(x, from + (column + 1) * width, a, last);
    count = columnPlaces(places, count, a, b, search);
    a = b;
  }
  const complete = count - before === inside;
  if (last < end) places[count++] = last;
  return taken(values, x, places, count, factor, complete);
}

/** Writes the places drawn of one pixel column, the samples from `a` up to but not including `b`. */
function columnPlaces(places: Uint32Array, count: number, a: number, b: number, search: ExtremeSearch): number {
  if (b - a <= PER_COLUMN) {
    for (let place = a; place < b; place++) places[count++] = place;
    return count;
  }
  search.between(a, b);
  const near = Math.min(search.least, search.greatest);
  const far = Math.max(search.least, search.greatest);
  places[count++] = a;
  if (near > a && near < b - 1) places[count++] = near;
  if (far > a && far < b - 1 && far !== near) places[count++] = far;
  places[count++] = b - 1;
  return count;
}

function placesBetween(start: number, end: number): Uint32Array {
  const places = new Uint32Array(end - start);
  for (let i = 0; i < places.length; i++) places[i] = start + i;
  return places;
}

function taken(
  { values, order }: DrawnValues,
  x: Float64Array,
  places: Uint32Array,
  count: number,
  factor: number,
  complete: boolean,
): Samples {
  const out = { x: new Float64Array(count), y: new Float64Array(count), count, complete };
  for (let i = 0; i < count; i++) {
    const place = places[i];
    out.x[i] = x[place];
    out.y[i] = factor * (order === null ? values[place] : values[order[place]]);
  }
  return out;
}

/** The first place from `low` up to `high` whose x is not below `at`; `high` where there is none. */
export function firstNotBelow(x: Float64Array, at: number, low: number, high: number): number {
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (x[middle] < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first place from `low` up to `high` whose x is above `at`; `high` where there is none. */
export function firstAbove(x: Float64Array, at: number, low: number, high: number): number {
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (x[middle] <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The place whose x is nearest to `at`, the first of equally near ones; -1 where there is none. */
export function nearestPlace(x: Float64Array, at: number): number {
  const after = firstNotBelow(x, at, 0, x.length);
  if (after === x.length) return x.length - 1;
  if (after === 0) return 0;
  return at - x[after - 1] <= x[after] - at ? after - 1 : after;
}
