import type { Curve } from './curve';
import { stretchSlope } from './level';
import type { Measured } from './measured';
import type { Noise } from './noise';
import type { SampleRange } from './range';

/** What counts as level: both, of the absolute slope of a stretch, per s. */
export interface LevelLimits {
  /** 0.005 %/K of the mass, as a slope in time. */
  readonly slope: number;
  /** 2 % of the largest rate passed, per s. */
  readonly ofRate: number;
}

/** How level one end of a window is. */
export interface LevelState {
  readonly slope: Measured;
  readonly limit: number;
  readonly level: boolean;
}

/** An end nobody asked about. */
export const untested: LevelState = { slope: { value: 0, noise: 0, dof: null }, limit: 0, level: true };

/** A slope is called too steep only where noise cannot make it so: beyond its limit by two of its uncertainties. */
const SURE = 2;

/** Whether a stretch is level: its slope, less what noise may do to it, is within the smaller limit. */
export function levelTest(curve: Curve, range: SampleRange, limits: LevelLimits, noise: Noise | null): LevelState {
  const slope = stretchSlope(curve, range, noise);
  const limit = Math.min(limits.slope, limits.ofRate);
  return { slope, limit, level: Math.abs(slope.value) - SURE * slope.noise <= limit };
}
