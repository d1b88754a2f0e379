/** Bits of a key sorted in one pass; three passes take all 32. */
const BITS = 11;
const BUCKETS = 1 << BITS;

/**
 * Indices sorted by their values, equal values in the order given. Radix sort over 32-bit keys proportional to the value
 * (D. E. Knuth, The Art of Computer Programming 3, 5.2.5, from memory); what shares a key is then sorted by the values
 * themselves. O(n) where the values spread over their range, as those of a ramp or a hold do.
 */
export function sortedBy(values: Float64Array, indices: Uint32Array): Uint32Array {
  const n = indices.length;
  let low = Infinity;
  let high = -Infinity;
  for (let k = 0; k < n; k++) {
    const value = values[indices[k]];
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (!(high > low)) return indices;
  // 0 where the range is too wide to be divided: then all share one key.
  const scale = 4294967295 / (high - low);
  let order = indices.slice();
  let keys = new Uint32Array(n);
  for (let k = 0; k < n; k++) keys[k] = Math.min((values[order[k]] - low) * scale, 4294967295);
  let nextOrder = new Uint32Array(n);
  let nextKeys = new Uint32Array(n);
  const starts = new Uint32Array(BUCKETS);
  for (let shift = 0; shift < 32; shift += BITS) {
    starts.fill(0);
    for (let k = 0; k < n; k++) starts[(keys[k] >>> shift) & (BUCKETS - 1)]++;
    for (let b = 0, sum = 0; b < BUCKETS; b++) {
      const count = starts[b];
      starts[b] = sum;
      sum += count;
    }
    for (let k = 0; k < n; k++) {
      const to = starts[(keys[k] >>> shift) & (BUCKETS - 1)]++;
      nextOrder[to] = order[k];
      nextKeys[to] = keys[k];
    }
    [order, nextOrder] = [nextOrder, order];
    [keys, nextKeys] = [nextKeys, keys];
  }
  for (let from = 0; from < n;) {
    let to = from + 1;
    let inOrder = true;
    for (; to < n && keys[to] === keys[from]; to++) inOrder &&= values[order[to]] >= values[order[to - 1]];
    // The sort of typed arrays is stable (ECMA-262, %TypedArray%.prototype.sort).
    if (!inOrder) order.subarray(from, to).sort((a, b) => values[a] - values[b]);
    from = to;
  }
  return order;
}
