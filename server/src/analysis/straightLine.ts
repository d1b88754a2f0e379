import type { Curve } from './curve';
import { functionalOf, type Functional } from './functional';
import { momentsOf } from './moments';

/** The straight line of least squares through some readings. */
export interface StraightLine {
  /** Per s. */
  readonly slope: number;
  at(t: number): number;
  functional(t: number): Functional;
  readonly slopeFunctional: Functional;
}

/** The straight line of least squares through the readings `first` to `last` (exclusive), two at least, from their moments. */
export function straightLine(curve: Curve, first: number, last: number): StraightLine {
  const { x } = curve;
  const m = momentsOf(curve, first, last);
  const slope = m.xy / m.xx;
  const mean = curve.y[first] + m.y;
  // The ordinate at `t` is mean plus slope times the way from the mean, and mean and slope do not correlate.
  const weighted = (ofMean: number, ofSlope: number): Functional =>
    functionalOf(first, m.count, (ofMean * ofMean) / m.count + (ofSlope * ofSlope) / m.xx, () => {
      const weights = new Float64Array(m.count);
      for (let i = 0; i < weights.length; i++) {
        weights[i] = ofMean / m.count + (ofSlope * (x[first + i] - x[first] - m.x)) / m.xx;
      }
      return weights;
    });
  const way = (t: number): number => t - x[first] - m.x;
  return {
    slope,
    at: (t) => mean + slope * way(t),
    functional: (t) => weighted(1, way(t)),
    slopeFunctional: weighted(0, 1),
  };
}
