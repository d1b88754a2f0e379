import assert from 'node:assert/strict';
import { divide, multiply } from '../../server/src/quantities/arithmetic';
import { correlated } from '../../server/src/quantities/correlated';
import { correlation } from '../../server/src/quantities/correlation';
import { coverageFactor } from '../../server/src/quantities/coverageFactor';
import { effectiveDof } from '../../server/src/quantities/effectiveDof';
import { cos, sin } from '../../server/src/quantities/functions';
import { propagate } from '../../server/src/quantities/propagate';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { near } from './near';

/** Five simultaneous observations of V (V), I (A) and φ (rad): JCGM 100:2008, table H.2. */
const observed = [
  [5.007, 4.994, 5.005, 4.99, 4.999],
  [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
  [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
];

function mean(xs: readonly number[]): number {
  return xs.reduce((sum, x) => sum + x, 0) / xs.length;
}

/** Covariance of two means (JCGM 100, 5.2.3). */
function covarianceOfMeans(x: readonly number[], y: readonly number[]): number {
  const n = x.length;
  return x.reduce((sum, xi, i) => sum + (xi - mean(x)) * (y[i]! - mean(y)), 0) / (n * (n - 1));
}

function inputs(
  us: readonly number[],
  matrix: readonly (readonly number[])[],
  values: readonly number[],
): readonly Uncertain[] {
  const made = correlated(values, us, matrix, ['V', 'I', 'φ'], [4, 4, 4]);
  assert.ok(made.ok);
  return made.value;
}

const us = observed.map((x) => Math.sqrt(covarianceOfMeans(x, x)));
const matrix = observed.map((x, i) => observed.map((y, j) => covarianceOfMeans(x, y) / (us[i]! * us[j]!)));

describe('JCGM 100 H.2, resistance and reactance measured together', () => {
  it('the inputs have the uncertainties and correlations of table H.2', () => {
    near(us[0]!, 0.0032, 0.00005);
    near(us[1]!, 0.0095e-3, 0.00005e-3);
    near(us[2]!, 0.00075, 0.000005);
    near(matrix[0]![1]!, -0.36, 0.005);
    near(matrix[0]![2]!, 0.86, 0.005);
    near(matrix[1]![2]!, -0.65, 0.005);
  });

  const [V, I, phi] = inputs(us, matrix, observed.map(mean)) as [Uncertain, Uncertain, Uncertain];
  const Z = divide(V, I);
  const routes: readonly (readonly [string, readonly [Uncertain, Uncertain, Uncertain]])[] = [
    ['the arithmetic', [multiply(Z, cos(phi)), multiply(Z, sin(phi)), Z]],
    [
      'numerical derivatives of the model',
      [
        propagate(([v, i, f]) => (v! / i!) * Math.cos(f!), [V, I, phi]),
        propagate(([v, i, f]) => (v! / i!) * Math.sin(f!), [V, I, phi]),
        propagate(([v, i]) => v! / i!, [V, I]),
      ],
    ],
  ];
  for (const [way, [R, X, Zs]] of routes) {
    it(`${way} gives R = 127.732, X = 219.847, Z = 254.260 ohm (table H.3)`, () => {
      near(R.value, 127.732, 0.0005);
      near(X.value, 219.847, 0.0005);
      near(Zs.value, 254.26, 0.0005);
    });

    it(`${way} gives u = 0.071, 0.296 and 0.236 ohm (table H.3 has 0.295 for X, from rounded steps)`, () => {
      near(standardUncertainty(R), 0.071, 0.0005);
      near(standardUncertainty(X), 0.2956, 0.0005);
      near(standardUncertainty(Zs), 0.236, 0.0005);
    });

    it(`${way} gives correlations -0.588, -0.485 and 0.993 (table H.3)`, () => {
      near(correlation(R, X), -0.588, 0.0005);
      near(correlation(R, Zs), -0.485, 0.0005);
      near(correlation(X, Zs), 0.993, 0.0005);
    });

    it(`${way} gives 4 degrees of freedom and k = 2.78: the five sets are one sample`, () => {
      for (const y of [R, X, Zs]) {
        near(effectiveDof(y) ?? NaN, 4, 1e-9);
        near(coverageFactor(effectiveDof(y)), 2.776, 0.0005);
      }
    });
  }

  it('the rounded inputs as printed give u(X) = 0.30 and r(R, X) = -0.59 still', () => {
    const rounded = [
      [1, -0.36, 0.86],
      [-0.36, 1, -0.65],
      [0.86, -0.65, 1],
    ];
    const [v, i, f] = inputs([0.0032, 9.5e-6, 0.00075], rounded, [4.999, 19.661e-3, 1.04446]);
    const z = divide(v!, i!);
    near(standardUncertainty(multiply(z, sin(f!))), 0.3, 0.005);
    near(correlation(multiply(z, cos(f!)), multiply(z, sin(f!))), -0.59, 0.005);
  });

  it('correlations matter: the same inputs taken as independent give u(R) = 0.195 instead of 0.071 (worked out by hand)', () => {
    const apart = inputs(
      us,
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      observed.map(mean),
    );
    const alone = multiply(divide(apart[0]!, apart[1]!), cos(apart[2]!));
    // √((R·u(V)/V)² + (R·u(I)/I)² + (X·u(φ))²)
    const expected = Math.hypot(127.732 * (us[0]! / 4.999), 127.732 * (us[1]! / 19.661e-3), 219.847 * us[2]!);
    near(standardUncertainty(alone), expected, 1e-4);
    near(expected, 0.195, 0.0005);
  });
});
