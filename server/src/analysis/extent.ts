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

function scan(values: Float64Array): Extent {
  let least = Infinity;
  let most = -Infinity;
  let leastStep = Infinity;
  let mostStep = -Infinity;
  let before = NaN;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    const step = value - before;
    // Only finite numbers differ from themselves by nothing.
    if (value - value !== 0) return { finite: false, least, most, leastStep, mostStep };
    if (value < least) least = value;
    if (value > most) most = value;
    if (step < leastStep) leastStep = step;
    if (step > mostStep) mostStep = step;
    before = value;
  }
  return { finite: true, least, most, leastStep, mostStep };
}

/** The values from `first` up to `last`: the column itself where that is all of it, so that its extent stays known. */
export function partOf(values: Float64Array, first: number, last: number): Float64Array {
  return first === 0 && last === values.length ? values : values.subarray(first, last);
}
