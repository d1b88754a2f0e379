import { checkedCurve, type Curve } from './curve';
import { peakPolynomial } from './heatTangent';
import { localPolynomial } from './localPolynomial';
import { samplesAround } from './range';

/** Full width at half height of a Gaussian of standard deviation 1. */
const HALF_WIDTH = 2 * Math.sqrt(2 * Math.log(2));

/**
 * What the local polynomial of full width `smooth` takes from the flank of a peak `wide` at half height, relative: the
 * same polynomial laid on a Gaussian of that width, on the curve's own sampling at `time`, against the Gaussian's own
 * slope at its steepest point.
 */
export function peakSmoothingLoss(curve: Curve, time: number, wide: number, smooth: number): number {
  if (!(wide > 0)) return 1;
  const sigma = wide / HALF_WIDTH;
  const shape = sampled(curve, time, smooth, (t) => Math.exp(-((t - sigma) ** 2) / (2 * sigma ** 2)));
  if (shape === null) return 1;
  return Math.abs((peakPolynomial(shape, time, smooth).at(time, 1) * sigma) / Math.exp(-0.5) - 1);
}

/** The same for a step whose height over its steepest slope is `wide`: a hyperbolic tangent, read by a cubic. */
export function stepSmoothingLoss(curve: Curve, time: number, wide: number, smooth: number): number {
  if (!(wide > 0)) return 1;
  const { x } = curve;
  const { first, weights } = localPolynomial(curve, time, smooth, 3).functional(time, 1);
  let slope = 0;
  for (let i = 0; i < weights.length; i++) {
    slope += weights[i] * (wide / 2) * Math.tanh((2 * (x[first + i] - time)) / wide);
  }
  return Math.abs(slope - 1);
}

function sampled(curve: Curve, time: number, smooth: number, shape: (t: number) => number): Curve | null {
  const { first, last } = samplesAround(curve.x, time, smooth, 9);
  const x = curve.x.slice(first, last);
  return checkedCurve(
    x,
    x.map((t) => shape(t - time)),
  );
}
