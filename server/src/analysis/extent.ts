/** Where the values of a column lie and how they go on, from one pass. */
export interface Extent {
  /** No value is missing or infinite; else the other numbers tell nothing. */
  readonly finite: boolean;
  readonly least: number;
  readonly most: number;
  /** Smallest and largest difference of a value and the one before it, with their signs. */
  readonly leastStep: number;
  readonly mostStep: number;
}

const known = new WeakMap<Float64Array, Extent>();

/**
 * The extent of a column, kept as long as the column (which must not change any more). Most of what is asked of a whole
 * column (is time in order, does the temperature ever turn back, is there a gap) is answered by these five without
 * another pass over a million readings.
 */
export function extentOf(values: Float64Array): Extent {
  let extent = known.get(values);
  if (extent === undefined) known.set(values, (extent = scan(values)));
  return extent;
}

/** A long column in pieces: V8 runs a function that is called often at full speed sooner than one long loop. */
const PIECE = 512;

function scan(values: Float64Array): Extent {
  const sums = Float64Array.of(Infinity, -Infinity, Infinity, -Infinity, NaN);
  let finite = true;
  for (let i = 0; finite && i < values.length; i += PIECE) {
    finite = scanPiece(values, i, Math.min(values.length, i + PIECE), sums);
  }
  const [least, most, leastStep, mostStep] = sums;
  return { finite, least, most, leastStep, mostStep };
}

/** Widens the extent `known` (in the order of `Extent`, and the value before) by a piece; false: a value is not finite. */
function scanPiece(values: Float64Array, from: number, to: number, known: Float64Array): boolean {
  let least = known[0];
  let most = known[1];
  let leastStep = known[2];
  let mostStep = known[3];
  let before = known[4];
  for (let i = from; i < to; i++) {
    const value = values[i];
    const step = value - before;
    // Only finite numbers differ from themselves by nothing.
    if (value - value !== 0) return false;
    if (value < least) least = value;
    if (value > most) most = value;
    if (step < leastStep) leastStep = step;
    if (step > mostStep) mostStep = step;
    before = value;
  }
  known[0] = least;
  known[1] = most;
  known[2] = leastStep;
  known[3] = mostStep;
  known[4] = before;
  return true;
}

/** The values from `first` up to `last`: the column itself where that is all of it, so that its extent stays known. */
export function partOf(values: Float64Array, first: number, last: number): Float64Array {
  return first === 0 && last === values.length ? values : values.subarray(first, last);
}
