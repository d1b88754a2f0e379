import { step, type Passages } from './passages';

/** How long a leg stays in a band of levels, and how long that usually takes beside it. */
export interface Dwell {
  /**
   * Time from the first passage of level `g` to the last of `g + band`. Where the leg covers only a part of the band, but a
   * kelvin of it, the time in that part in proportion; null where it covers less.
   */
  at(g: number): number | null;
  /** Median over the bands within five widths below `g` (`side` -1) or above `g + band`; null where there is none. */
  beside(g: number, side: 1 | -1): number | null;
}

const widths = 5;

export function dwellIn(time: Float64Array, { first, last, levels }: Passages, band: number): Dwell {
  const at = (g: number): number | null => {
    const low = Math.max(0, g);
    const high = Math.min(levels - 1, g + band);
    if (high - low < Math.min(band, 1 / step)) return null;
    return (Math.max(0, time[last[high]] - time[first[low]]) * band) / (high - low);
  };
  return {
    at,
    // A way back lengthens one or two bands and shortens the next: the median of many knows neither.
    beside(g, side) {
      const stays: number[] = [];
      for (let k = 0; k <= 2 * widths - 2; k++) {
        const other = g + side * (band + Math.round((k * band) / 2));
        if (other < 0 || other + band >= levels) break;
        stays.push(Math.max(0, time[last[other + band]] - time[first[other]]));
      }
      if (stays.length === 0) return at(g + side * band);
      stays.sort((a, b) => a - b);
      return stays[(stays.length - 1) >> 1];
    },
  };
}
