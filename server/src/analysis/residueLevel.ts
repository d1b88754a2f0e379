import type { Curve } from './curve';
import { levelAt, stretchSlope } from './level';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';

export interface ResidueLevel {
  /** Mean of the readings within `over`. */
  readonly level: Measured;
  /** Its slope, per s: gain positive. */
  readonly drift: Measured;
  readonly readings: number;
  /** First and last time averaged. */
  readonly from: number;
  readonly to: number;
}

/**
 * What is left at a time: the mean of the readings within `over` (s) centred on it, clipped to the data, so that at the
 * end of a segment it is the last half of `over` (ISO 11358-1, residue; from memory), and its slope. Null outside the data.
 */
export function residueLevel(curve: Curve, at: number, over: number, noise: Noise | null): ResidueLevel | null {
  const { x } = curve;
  if (at < x[0] || at > x[x.length - 1]) return null;
  const level = levelAt(curve, at, over);
  return {
    level: {
      value: level.at(at),
      noise: noise === null ? 0 : noiseOf(noise, x, [{ times: 1, of: level.functional(at) }]),
      dof: noise?.dof ?? null,
    },
    drift: stretchSlope(curve, level.range, noise),
    readings: level.range.last - level.range.first,
    from: level.from,
    to: level.to,
  };
}
