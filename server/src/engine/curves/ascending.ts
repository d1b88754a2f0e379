/** The places of samples along an abscissa that only ascends. */
export interface Ascending {
  /** Finite, never falling; equal values are kept. */
  readonly x: Float64Array;
  /** Index of the sample at each place; null: the samples stand in this order already. */
  readonly order: Uint32Array | null;
}

/**
 * Samples put in ascending order of an abscissa: as they are where it ascends, turned round on a cooling ramp, sorted
 * where it runs back in noise or stands still. Equal values keep the order of the data (turned round where the whole
 * falls). Samples without a finite value are left out. O(n) for ramps, also noisy ones; O(n log n) in a hold.
 */
export function ascending(values: Float64Array): Ascending {
  const n = values.length;
  let rises = true;
  let falls = true;
  let finite = true;
  for (let i = 0; i < n; i++) {
    finite &&= Number.isFinite(values[i]);
    if (i === 0) continue;
    rises &&= values[i] >= values[i - 1];
    falls &&= values[i] <= values[i - 1];
  }
  if (finite && rises) return { x: values, order: null };
  const kept = finite ? n : values.reduce((count, v) => count + (Number.isFinite(v) ? 1 : 0), 0);
  const order = new Uint32Array(kept);
  for (let i = 0, k = 0; i < n; i++) if (Number.isFinite(values[i])) order[k++] = i;
  const down = finite ? values[n - 1] < values[0] : kept > 0 && values[order[kept - 1]] < values[order[0]];
  if (down) order.reverse();
  if (!(finite && falls)) sortNearly(order, values);
  return { x: Float64Array.from(order, (i) => values[i]), order };
}

/** Lengths from which stretches are merged; shorter ones are sorted by insertion. */
const RUN = 16;

/**
 * Stable merge sort from below. Two neighbours are merged only where they overlap: in a record that is ascending but for
 * its noise that is a few samples, and the whole costs little more than looking at each once.
 */
function sortNearly(order: Uint32Array, values: Float64Array): void {
  const n = order.length;
  for (let from = 0; from < n; from += RUN) insertion(order, values, from, Math.min(from + RUN, n));
  const spare = new Uint32Array(n >> 1);
  for (let size = RUN; size < n; size *= 2) {
    for (let from = 0; from + size < n; from += 2 * size) {
      mergeOverlap(order, values, spare, from, from + size, Math.min(from + 2 * size, n));
    }
  }
}

function insertion(order: Uint32Array, values: Float64Array, from: number, to: number): void {
  for (let i = from + 1; i < to; i++) {
    const index = order[i];
    const value = values[index];
    let k = i;
    for (; k > from && values[order[k - 1]] > value; k--) order[k] = order[k - 1];
    order[k] = index;
  }
}

function mergeOverlap(
  order: Uint32Array,
  values: Float64Array,
  spare: Uint32Array,
  from: number,
  middle: number,
  to: number,
): void {
  const firstRight = values[order[middle]];
  const lastLeft = values[order[middle - 1]];
  if (lastLeft <= firstRight) return;
  let left = middle;
  while (left > from && values[order[left - 1]] > firstRight) left--;
  let end = middle;
  while (end < to && values[order[end]] < lastLeft) end++;
  if (middle - left > spare.length) {
    mergeFromRight(order, values, spare, left, middle, end);
    return;
  }
  const length = middle - left;
  for (let i = 0; i < length; i++) spare[i] = order[left + i];
  let a = 0;
  let b = middle;
  for (let k = left; a < length; k++) {
    if (b < end && values[order[b]] < values[spare[a]]) order[k] = order[b++];
    else order[k] = spare[a++];
  }
}

/** The same where the left part is longer than the spare room: the right part is set aside instead. */
function mergeFromRight(
  order: Uint32Array,
  values: Float64Array,
  spare: Uint32Array,
  left: number,
  middle: number,
  end: number,
): void {
  const length = end - middle;
  for (let i = 0; i < length; i++) spare[i] = order[middle + i];
  let a = middle - 1;
  let b = length - 1;
  for (let k = end - 1; b >= 0; k--) {
    if (a >= left && values[order[a]] > values[spare[b]]) order[k] = order[a--];
    else order[k] = spare[b--];
  }
}
