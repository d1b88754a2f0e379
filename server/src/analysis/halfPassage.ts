import type { Baseline } from './baseline';
import type { Curve } from './curve';
import type { Term } from './functional';
import { peakPolynomial } from './heatTangent';
import type { PeakTop } from './peakTop';

export interface HalfPassage {
  readonly time: number;
  terms(top: PeakTop): readonly Term[];
}

const ROUNDS = 12;

/** Where the curve is half of the height away from the baseline, before (-1) or after (1) the top, by local polynomials. */
export function halfPassage(
  curve: Curve,
  baseline: Baseline,
  left: number,
  right: number,
  level: number,
  width: number,
  side: 1 | -1,
): HalfPassage | null {
  let time = side < 0 ? left : right;
  let fit = peakPolynomial(curve, time, width);
  let slope = fit.at(time, 1) - baseline.slopeAt(time);
  const step = (right - left) / 4;
  for (let round = 0; round < ROUNDS; round++) {
    // On its way down on the far side, up on the near one.
    if (!(side * Math.sign(level) * slope < 0)) return null;
    const move = -(fit.at(time) - baseline.at(time) - level) / slope;
    time += Math.max(-step, Math.min(step, move));
    if (Math.abs(move) <= 1e-9 * step) break;
    fit = peakPolynomial(curve, time, width);
    slope = fit.at(time, 1) - baseline.slopeAt(time);
  }
  return {
    time,
    terms: (top) => [
      { times: -1 / slope, of: fit.functional(time) },
      ...baseline.termsAt(time).map(({ times, of }) => ({ times: times / slope, of })),
      ...top.heightTerms().map(({ times, of }) => ({ times: times / 2 / slope, of })),
    ],
  };
}
