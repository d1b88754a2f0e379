import type { Baseline } from './baseline';
import type { Curve, Window } from './curve';
import type { Term } from './functional';
import type { Outline } from './heatProfile';
import { peakPolynomial } from './heatTangent';

export interface PeakTop {
  readonly time: number;
  /** Ordinate of the curve there. */
  readonly value: number;
  /** Time and height above the baseline as functionals of the samples. */
  timeTerms(): readonly Term[];
  heightTerms(): readonly Term[];
}

const ROUNDS = 12;

/**
 * The point farthest from the baseline: where the slope of the local polynomial equals that of the baseline, the
 * polynomial centred on the point itself. Noise moves it by -(noise of the slope) / curvature.
 */
export function peakTop(curve: Curve, window: Window, baseline: Baseline, outline: Outline, width: number): PeakTop {
  let time = outline.top;
  let fit = peakPolynomial(curve, time, width);
  const step = (curve.x[fit.last - 1] - curve.x[fit.first]) / 4;
  for (let round = 0; round < ROUNDS; round++) {
    const curvature = fit.at(time, 2);
    if (!(outline.direction * curvature < 0)) break;
    const move = -(fit.at(time, 1) - baseline.slopeAt(time)) / curvature;
    const next = Math.min(Math.max(time + Math.max(-step, Math.min(step, move)), window.from), window.to);
    const moved = Math.abs(next - time);
    time = next;
    if (moved <= 1e-9 * step) break;
    fit = peakPolynomial(curve, time, width);
  }
  return {
    time,
    value: fit.at(time),
    timeTerms() {
      const curvature = fit.at(time, 2);
      return [
        { times: -1 / curvature, of: fit.functional(time, 1) },
        ...baseline.slopeTermsAt(time).map(({ times, of }) => ({ times: times / curvature, of })),
      ];
    },
    heightTerms: () => [
      { times: 1, of: fit.functional(time) },
      ...baseline.termsAt(time).map(({ times, of }) => ({ times: -times, of })),
    ],
  };
}
