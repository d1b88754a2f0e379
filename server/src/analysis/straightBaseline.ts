import type { Baseline, BaselineKind, Line } from './baseline';
import type { Window } from './curve';
import type { Term } from './functional';
import type { PolynomialFit } from './polynomialFit';
import type { IntegralGrid } from './windowIntegral';

/** The line fitted to one level stretch, extrapolated; `at` is any point of the stretch. */
export function fittedLine(fit: PolynomialFit, at: number): Line {
  const value = fit.at(at);
  const slope = fit.at(at, 1);
  return {
    at: (t) => value + slope * (t - at),
    slope,
    termsAt: (t) => [{ times: 1, of: fit.functional(t) }],
    slopeTerms: () => [{ times: 1, of: fit.functional(at, 1) }],
  };
}

/** The line through the local levels of the curve at both limits. */
export function joiningLine(left: PolynomialFit, right: PolynomialFit, { from, to }: Window): Line {
  const start = left.at(from);
  const slope = (right.at(to) - start) / (to - from);
  const atFrom = left.functional(from);
  const atTo = right.functional(to);
  return {
    at: (t) => start + slope * (t - from),
    slope,
    termsAt(t) {
      const share = (t - from) / (to - from);
      return [
        { times: 1 - share, of: atFrom },
        { times: share, of: atTo },
      ];
    },
    slopeTerms: () => [
      { times: -1 / (to - from), of: atFrom },
      { times: 1 / (to - from), of: atTo },
    ],
  };
}

/** The baseline that is one straight line over the whole window. */
export function straightBaseline(kind: BaselineKind, line: Line, grid: IntegralGrid): Baseline {
  const from = grid.x[0];
  const to = grid.x[grid.x.length - 1];
  const area = grid.integral + (grid.origin - line.at((from + to) / 2)) * (to - from);
  return {
    kind,
    at: (t) => line.at(t),
    slopeAt: () => line.slope,
    termsAt: (t) => line.termsAt(t),
    slopeTermsAt: () => line.slopeTerms(),
    before: line,
    after: line,
    area,
    areaTerms(): readonly Term[] {
      // The integral of a straight line is its value in the middle times the width.
      const below = line.termsAt((from + to) / 2).map(({ times, of }) => ({ times: -times * (to - from), of }));
      return [{ times: 1, of: grid.functional() }, ...below];
    },
    converged: true,
    fraction: { lowest: 0, highest: 1 },
  };
}
