/** Values of the smallest block, and how many blocks of one level the next one joins. */
const BLOCK = 16;

/**
 * Places of the least and the greatest value in every block of 16 values, in every 16 such blocks, and so on: the extremes
 * of any stretch are found by looking at some fifty numbers, however long it is.
 */
export interface ExtremePyramid {
  readonly levels: readonly PyramidLevel[];
}

interface PyramidLevel {
  readonly size: number;
  readonly least: Uint32Array;
  readonly greatest: Uint32Array;
  /** The values there, side by side: looking them up one by one costs more than all else. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Values in the order in which they are drawn: `values[order[place]]`, or `values[place]` where there is no order. */
export interface DrawnValues {
  readonly values: Float64Array;
  readonly order: Uint32Array | null;
  readonly length: number;
}

/** O(n) once; a fifth of the memory of the values. */
export function extremePyramid(drawn: DrawnValues): ExtremePyramid {
  const levels: PyramidLevel[] = [];
  const search = new ExtremeSearch({ levels: [] }, drawn);
  for (let size = BLOCK; size <= drawn.length; size *= BLOCK) {
    const blocks = Math.floor(drawn.length / size);
    const level = {
      size,
      least: new Uint32Array(blocks),
      greatest: new Uint32Array(blocks),
      low: new Float64Array(blocks),
      high: new Float64Array(blocks),
    };
    const below = levels.at(-1);
    for (let b = 0; b < blocks; b++) {
      if (below === undefined) search.values(b * size, (b + 1) * size, true);
      else search.blocks(below, b * BLOCK, (b + 1) * BLOCK, true);
      level.least[b] = search.least;
      level.greatest[b] = search.greatest;
      level.low[b] = search.low;
      level.high[b] = search.high;
    }
    levels.push(level);
  }
  return { levels };
}

/** Finds the extremes of stretches; one object serves many searches, so that none allocates. */
export class ExtremeSearch {
  /** Places of the first least and the first greatest value found, and the values. */
  least = 0;
  greatest = 0;
  low = 0;
  high = 0;

  constructor(
    private readonly pyramid: ExtremePyramid,
    private readonly drawn: DrawnValues,
  ) {}

  /** Looks from `first` up to but not including `last`, at one place at least. */
  between(first: number, last: number): void {
    const { levels } = this.pyramid;
    this.values(first, first + 1, true);
    // Up through the levels to the widest blocks that fit, and down again.
    let at = first + 1;
    let level = 0;
    for (; level < levels.length; level++) {
      const { size } = levels[level];
      const start = Math.ceil(at / size) * size;
      if (start + size > last) break;
      this.upTo(level - 1, at, start);
      at = start;
    }
    for (level--; level >= 0; level--) {
      const { size } = levels[level];
      const end = Math.floor(last / size) * size;
      this.upTo(level, at, end);
      at = end;
    }
    this.values(at, last, false);
  }

  /** Whole blocks of a level from `at` up to `end`; level -1: the values themselves. */
  private upTo(level: number, at: number, end: number): void {
    if (level < 0) {
      this.values(at, end, false);
      return;
    }
    const of = this.pyramid.levels[level];
    this.blocks(of, at / of.size, end / of.size, false);
  }

  values(first: number, last: number, anew: boolean): void {
    const { values, order } = this.drawn;
    let { low, high, least, greatest } = this;
    if (anew) {
      least = greatest = first;
      low = high = order === null ? values[first] : values[order[first]];
    }
    for (let place = first; place < last; place++) {
      const value = order === null ? values[place] : values[order[place]];
      if (value < low) {
        low = value;
        least = place;
      }
      if (value > high) {
        high = value;
        greatest = place;
      }
    }
    this.keep(low, high, least, greatest);
  }

  blocks(level: PyramidLevel, first: number, last: number, anew: boolean): void {
    const { low: lows, high: highs } = level;
    let { low, high } = this;
    let lowest = -1;
    let highest = -1;
    if (anew) {
      low = lows[first];
      high = highs[first];
      lowest = highest = first;
    }
    for (let block = first; block < last; block++) {
      if (lows[block] < low) {
        low = lows[block];
        lowest = block;
      }
      if (highs[block] > high) {
        high = highs[block];
        highest = block;
      }
    }
    const least = lowest < 0 ? this.least : level.least[lowest];
    this.keep(low, high, least, highest < 0 ? this.greatest : level.greatest[highest]);
  }

  private keep(low: number, high: number, least: number, greatest: number): void {
    this.low = low;
    this.high = high;
    this.least = least;
    this.greatest = greatest;
  }
}
