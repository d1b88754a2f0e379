import type { Curve } from './curve';
import type { Functional } from './functional';
import { meanFunctional } from './functional';
import type { Measured } from './measured';
import { momentsOf } from './moments';
import { noiseOf, type Noise } from './noise';
import { samplesAround, type SampleRange } from './range';
import { straightLine } from './straightLine';

/** A straight line read from a stretch of a curve, horizontal for a level. */
export interface StretchLine {
  readonly range: SampleRange;
  /** First and last abscissa of the readings used. */
  readonly from: number;
  readonly to: number;
  /** Slope of the line itself: 0 for a level. */
  readonly slope: number;
  at(t: number): number;
  functional(t: number): Functional;
}

/** The readings within `span` centred on `edge`, clipped to the data; two at least. */
export function stretchAt(curve: Curve, edge: number, span: number): SampleRange {
  return samplesAround(curve.x, edge, span, 2);
}

/** The level at `edge`: the mean of the readings within `span`. */
export function levelAt(curve: Curve, edge: number, span: number): StretchLine {
  const range = stretchAt(curve, edge, span);
  const { first, last } = range;
  const mean = curve.y[first] + momentsOf(curve, first, last).y;
  const functional = meanFunctional(first, last);
  return {
    range,
    from: curve.x[first],
    to: curve.x[last - 1],
    slope: 0,
    at: () => mean,
    functional: () => functional,
  };
}

/** The straight line of least squares through the readings within `span` about `edge`. */
export function lineAt(curve: Curve, edge: number, span: number): StretchLine {
  const range = samplesAround(curve.x, edge, span, 3);
  const { slope, at, functional } = straightLine(curve, range.first, range.last);
  return { range, from: curve.x[range.first], to: curve.x[range.last - 1], slope, at, functional };
}

/** The slope of a stretch (per s) with its noise. */
export function stretchSlope(curve: Curve, range: SampleRange, noise: Noise | null): Measured {
  const { first, last } = range;
  if (last - first < 2) return { value: 0, noise: 0, dof: null };
  const line = straightLine(curve, first, last);
  return {
    value: line.slope,
    noise: noise === null ? 0 : noiseOf(noise, curve.x, [{ times: 1, of: line.slopeFunctional }]),
    dof: noise?.dof ?? null,
  };
}
