import { extentOf } from './extent';

declare const checked: unique symbol;

/**
 * A checked curve: `x` finite and strictly increasing (time in seconds, everywhere in `analysis`), `y` finite, equal
 * lengths, at least two points. Only `checkedCurve` makes one, and only these enter the numeric functions.
 */
export interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly [checked]: true;
}

/** A window on the abscissa of a curve, `from < to`. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

export function checkedCurve(x: Float64Array, y: Float64Array): Curve | null {
  if (x.length !== y.length || x.length < 2) return null;
  const abscissa = extentOf(x);
  if (!abscissa.finite || !(abscissa.leastStep > 0) || !extentOf(y).finite) return null;
  return { x, y } as unknown as Curve;
}
