/** Values of one block; each further level joins as many blocks. */
const BLOCK = 64;

/**
 * Places of the least and the greatest value in every block of 64 values, in every 64 such blocks, and so on: the
 * extremes of any stretch are found by looking at some hundred numbers, however long it is.
 */
export interface ExtremePyramid {
  readonly levels: readonly { readonly size: number; readonly least: Uint32Array; readonly greatest: Uint32Array }[];
}

/** Values in the order in which they are drawn: `values[order[place]]`, or `values[place]` where there is no order. */
export interface DrawnValues {
  readonly values: Float64Array;
  readonly order: Uint32Array | null;
  readonly length: number;
}

/** O(n) once; a thirtieth of the memory of the values. */
export function extremePyramid(drawn: DrawnValues): ExtremePyramid {
  const levels: { size: number; least: Uint32Array; greatest: Uint32Array }[] = [];
  for (let size = BLOCK; size <= drawn.length; size *= BLOCK) {
    const blocks = Math.floor(drawn.length / size);
    const least = new Uint32Array(blocks);
    const greatest = new Uint32Array(blocks);
    const below = { levels };
    const found = new Uint32Array(2);
    for (let b = 0; b < blocks; b++) {
      extremesOf(below, drawn, b * size, (b + 1) * size, found);
      least[b] = found[0];
      greatest[b] = found[1];
    }
    levels.push({ size, least, greatest });
  }
  return { levels };
}

/**
 * Places of the least and the greatest value from `first` up to but not including `last` (at least one place), the
 * first of equal ones, written to `found`.
 */
export function extremesOf(
  { levels }: ExtremePyramid,
  drawn: DrawnValues,
  first: number,
  last: number,
  found: Uint32Array,
): void {
  const { values, order } = drawn;
  let least = first;
  let greatest = first;
  let low = order === null ? values[first] : values[order[first]];
  let high = low;
  let level = 0;
  for (let place = first + 1; place < last;) {
    while (level < levels.length && place % levels[level].size === 0 && place + levels[level].size <= last) level++;
    while (level > 0 && (place % levels[level - 1].size !== 0 || place + levels[level - 1].size > last)) level--;
    if (level === 0) {
      const value = order === null ? values[place] : values[order[place]];
      if (value < low) {
        low = value;
        least = place;
      } else if (value > high) {
        high = value;
        greatest = place;
      }
      place++;
      continue;
    }
    const { size, least: leasts, greatest: greatests } = levels[level - 1];
    const a = leasts[place / size];
    const b = greatests[place / size];
    const lowest = order === null ? values[a] : values[order[a]];
    const highest = order === null ? values[b] : values[order[b]];
    if (lowest < low) {
      low = lowest;
      least = a;
    }
    if (highest > high) {
      high = highest;
      greatest = b;
    }
    place += size;
  }
  found[0] = least;
  found[1] = greatest;
}
