import type { Abscissa } from '../../protocol/view';
import type { Ascending } from './ascending';
import { extremePyramid, ExtremeSearch, type DrawnValues, type ExtremePyramid } from './extremePyramid';
import type { Drawn } from './samplesIn';

/**
 * The samples of one signal in one part, without a gap, as the evaluation sees them: what is drawn of them is kept here,
 * whoever asks for it and in whatever unit.
 */
export class StoredCurve {
  private overTime: Drawn | null = null;
  private overTemperature: Drawn | null | undefined = undefined;
  private extremes: { readonly low: number; readonly high: number } | null = null;

  constructor(
    readonly part: string,
    /** s, ascending. */
    readonly time: Float64Array,
    readonly values: Float64Array,
    private readonly temperature: () => Ascending | null,
  ) {}

  drawn(abscissa: Abscissa): Drawn | null {
    this.overTime ??= drawnOver({ x: this.time, order: null }, this.values);
    if (abscissa === 'time') return this.overTime;
    if (this.overTemperature === undefined) {
      const axis = this.temperature();
      const pyramid = this.overTime.pyramid;
      // In the order of the data the extremes are those over time.
      this.overTemperature =
        axis === null
          ? null
          : axis.order === null
            ? { axis, values: this.values, pyramid }
            : drawnOver(axis, this.values);
    }
    return this.overTemperature;
  }

  /** What a picture of the whole looks up, in steps; nothing is left to do the second time. */
  *prepare(abscissa: Abscissa): Generator<void> {
    if (this.extremes === null) {
      this.range();
      yield;
    }
    if (abscissa === 'time' || this.overTemperature !== undefined) return;
    const drawn = this.drawn('temperature');
    yield;
    drawn?.pyramid();
    yield;
  }

  /** Least and greatest value, as stored. */
  range(): { readonly low: number; readonly high: number } {
    if (this.extremes === null) {
      const values = drawnValues({ x: this.time, order: null }, this.values);
      const search = new ExtremeSearch(this.drawn('time')!.pyramid(), values);
      search.between(0, this.time.length);
      this.extremes = { low: this.values[search.least], high: this.values[search.greatest] };
    }
    return this.extremes;
  }
}

function drawnOver(axis: Ascending, values: Float64Array): Drawn {
  let made: ExtremePyramid | null = null;
  return { axis, values, pyramid: () => (made ??= extremePyramid(drawnValues(axis, values))) };
}

function drawnValues({ x, order }: Ascending, values: Float64Array): DrawnValues {
  return { values, order, length: x.length };
}
