import type { Line } from './baseline';
import type { Curve, Window } from './curve';
import type { GlassLines } from './glassLines';
import { meanFunctional } from './functional';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { firstAfter, firstAtOrAfter, type SampleRange } from './range';
import type { Steepest } from './steepest';
import { stepSmoothingLoss } from './smoothingLoss';
import { timeBlocks } from './timeBlocks';

/** How straight the curve is where a line was fitted. */
export interface LineState {
  /** Length of the stretch, s. */
  readonly length: number;
  /** Greatest distance of the parabola through the same samples from the line, unit of y, and over the step. */
  readonly bend: Measured;
  readonly ofStep: number;
  /** Whether it is straight: the bend is below three of its uncertainties or a fiftieth of the step. */
  readonly straight: boolean;
}

/** What findings about a glass transition are made of. */
export interface GlassChecks {
  readonly from: LineState;
  readonly to: LineState;
  /** The relaxation peak: how far the curve goes beyond the second line after the inflection, over the step. */
  readonly overshoot: { readonly ofStep: number; readonly sigmas: number; readonly time: number };
  /** Readings in the window. */
  readonly readings: number;
  /** Width of the local polynomial used, s, and what it takes from the slope of a step this wide, relative. */
  readonly smooth: number;
  readonly smoothingLoss: number;
}

const SURE = 3;
const MATERIAL = 0.02;

export function glassChecks(
  curve: Curve,
  window: Window,
  lines: GlassLines,
  found: { at: number; step: Measured; smooth: number; steep: Steepest | null; noise: Noise; readings: number },
): GlassChecks {
  const { step, noise, smooth, steep } = found;
  const height = Math.abs(step.value);
  const wide = steep === null ? window.to - window.from : height / Math.abs(steep.slope.value);
  return {
    from: lineState(curve, lines.rangeBefore, height, noise),
    to: lineState(curve, lines.rangeAfter, height, noise),
    overshoot: overshootOf(curve, { from: steep?.time.value ?? found.at, to: window.to }, lines, wide, height, noise),
    readings: found.readings,
    smooth,
    smoothingLoss: stepSmoothingLoss(curve, steep?.time.value ?? found.at, wide, smooth),
  };
}

function lineState(curve: Curve, { first, last }: SampleRange, height: number, noise: Noise): LineState {
  const { x, y } = curve;
  const length = x[last - 1] - x[first];
  const parabola = fitPolynomial(x, y, first, last, 2);
  // A parabola and its line are farthest apart at the ends: a twelfth of curvature times length squared.
  const factor = length ** 2 / 12;
  const middle = (x[first] + x[last - 1]) / 2;
  const bend: Measured = {
    value: factor * parabola.at(middle, 2),
    noise: noiseOf(noise, x, [{ times: factor, of: parabola.functional(middle, 2) }]),
    dof: noise.dof,
  };
  const size = Math.abs(bend.value);
  return {
    length,
    bend,
    ofStep: size / height,
    straight: size <= SURE * bend.noise || size <= MATERIAL * height,
  };
}

function overshootOf(
  curve: Curve,
  { from, to }: Window,
  { after, direction }: { after: Line; direction: 1 | -1 },
  wide: number,
  height: number,
  noise: Noise,
): GlassChecks['overshoot'] {
  const { x, y } = curve;
  const range = { first: firstAtOrAfter(x, from), last: firstAfter(x, to) };
  const blocks = timeBlocks(x, y, range, wide / 4, from);
  let best = -1;
  let most = 0;
  blocks.x.forEach((t, k) => {
    const beyond = direction * (blocks.y[k] - after.at(t));
    if (beyond > most) [best, most] = [k, beyond];
  });
  if (best < 0) return { ofStep: 0, sigmas: 0, time: to };
  const u = noiseOf(noise, x, [
    { times: 1, of: meanFunctional(blocks.bounds[best], blocks.bounds[best + 1]) },
    ...after.termsAt(blocks.x[best]).map(({ times, of }) => ({ times: -times, of })),
  ]);
  return { ofStep: most / height, sigmas: u > 0 ? most / u : Infinity, time: blocks.x[best] };
}
