import type { Curve, Window } from './curve';
import type { Term } from './functional';
import type { GlassLines } from './glassLines';
import { localPolynomial } from './localPolynomial';
import { windowIntegral } from './windowIntegral';

/** A point in time as a functional of the samples. */
export interface GlassPoint {
  readonly time: number;
  terms(): readonly Term[];
}

const ROUNDS = 20;

/** Where the curve meets the line midway between both lines, next to the inflection (ISO 11357-2, from memory). */
export function halfHeightPoint(
  curve: Curve,
  window: Window,
  { before, after, direction }: GlassLines,
  start: number,
  smooth: number,
): GlassPoint | null {
  const between = (before.slope + after.slope) / 2;
  let time = start;
  let fit = localPolynomial(curve, time, smooth, 3);
  const reach = Math.max(smooth, (curve.x[fit.last - 1] - curve.x[fit.first]) / 2);
  let slope = 0;
  for (let round = 0; round < ROUNDS; round++) {
    slope = fit.at(time, 1) - between;
    if (!(direction * slope > 0)) return null;
    const move = ((before.at(time) + after.at(time)) / 2 - fit.at(time)) / slope;
    time += Math.max(-reach / 2, Math.min(reach / 2, move));
    if (time < window.from || time > window.to) return null;
    if (Math.abs(move) <= 1e-10 * reach) break;
    fit = localPolynomial(curve, time, smooth, 3);
  }
  return {
    time,
    terms: () => [
      { times: -1 / slope, of: fit.functional(time) },
      ...[...before.termsAt(time), ...after.termsAt(time)].map(({ times, of }) => ({ times: times / 2 / slope, of })),
    ],
  };
}

/**
 * The vertical that leaves as much area between curve and first line before it as between second line and curve behind
 * it (ISO 11357-2, from memory): the root of the integral of the curve less that of the first line up to t less that of
 * the second from t on, which is a parabola in t because the lines are straight. `thin` is `curve` or averages of it, to
 * which the lines belong; what is integrated is `curve`.
 */
export function equalAreasPoint(
  curve: Curve,
  thin: Curve,
  window: Window,
  { before, after }: GlassLines,
): GlassPoint | null {
  const { from, to } = window;
  const grid = windowIntegral(curve, thin, window);
  const total = grid.integral + (grid.origin - before.at((from + to) / 2)) * (to - from);
  // Behind t the second line is higher by gap; its integral from t to the end must equal `total`.
  const gap = (t: number): number => after.at(t) - before.at(t);
  let time = (from + to) / 2;
  for (let round = 0; round < ROUNDS; round++) {
    const here = gap(time);
    if (here === 0) return null;
    const move = (((gap(time) + gap(to)) / 2) * (to - time) - total) / here;
    time += move;
    if (!(time > from && time < to)) return null;
    if (Math.abs(move) <= 1e-12 * (to - from)) break;
  }
  const here = gap(time);
  return {
    time,
    terms: () => [
      { times: -1 / here, of: grid.functional() },
      ...before.termsAt((from + time) / 2).map(({ times, of }) => ({ times: (times * (time - from)) / here, of })),
      ...after.termsAt((time + to) / 2).map(({ times, of }) => ({ times: (times * (to - time)) / here, of })),
    ],
  };
}
