import assert from 'node:assert/strict';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { apply } from '../../server/src/analysis/functional';
import { localPolynomial } from '../../server/src/analysis/localPolynomial';
import { localSlope } from '../../server/src/analysis/localSlope';
import { fitPolynomial } from '../../server/src/analysis/polynomialFit';
import { slopeAt, slopeCurve } from '../../server/src/analysis/slopeCurve';
import { seeded, whiteNoise } from '../support/random';

function curve(x: readonly number[] | Float64Array, y: readonly number[] | Float64Array): Curve {
  return checkedCurve(Float64Array.from(x), Float64Array.from(y))!;
}

function near(actual: number, expected: number, tolerance: number): void {
  assert.ok(Math.abs(actual - expected) <= tolerance, `${actual} is not ${expected} within ${tolerance}`);
}

describe('A polynomial fitted to readings', () => {
  const x = [0, 0.7, 1.1, 2.0, 2.4, 3.5, 4.1, 5.0, 5.2, 6.3];
  const y = [3.1, 2.9, 3.4, 2.2, 1.7, 0.4, 0.9, 1.3, 0.8, -0.6];

  // numpy.polyfit about 2.5, lowest power first: core-reference.py.
  const numpy: readonly (readonly number[])[] = [
    [1.9056996612348853, -0.5579238891224253],
    [1.830689334678068, -0.5201036944772012, 0.027016048937738533, -0.008721587092259363],
    [1.4452063105446813, -1.041412286721801, 0.34798037659623277, 0.103907898718538, -0.04217109223438139],
  ];
  for (const coefficients of numpy) {
    const degree = coefficients.length - 1;
    it(`has on an uneven grid the coefficients numpy gives, degree ${degree}`, () => {
      const fit = fitPolynomial(Float64Array.from(x), Float64Array.from(y), 0, x.length, degree);
      let factorial = 1;
      coefficients.forEach((c, k) => {
        if (k > 0) factorial *= k;
        near(fit.at(2.5, k) / factorial, c, 1e-12);
      });
    });
  }

  it('gives through its weights the same number as through its value, at any point and derivative', () => {
    const random = seeded(11);
    for (let trial = 0; trial < 50; trial++) {
      const n = 6 + random.integer(20);
      const xs = Float64Array.from({ length: n }, (_, i) => i + 0.8 * random.uniform());
      const ys = whiteNoise(n, 1, random);
      const fit = fitPolynomial(xs, ys, 0, n, random.integer(5));
      const t = xs[0] + random.uniform() * (xs[n - 1] - xs[0]);
      for (let k = 0; k < 4; k++)
        near(apply(fit.functional(t, k), ys), fit.at(t, k), 1e-9 * (1 + Math.abs(fit.at(t, k))));
    }
  });

  it('returns a polynomial of its own degree exactly, with counts as without', () => {
    const xs = Float64Array.from([0, 1, 2.5, 3, 4.5, 5, 7]);
    const ys = xs.map((v) => 2 - v + 0.5 * v ** 2 - 0.1 * v ** 3);
    for (const counts of [undefined, Float64Array.from([1, 5, 2, 2, 9, 1, 3])]) {
      const fit = fitPolynomial(xs, ys, 0, 7, 3, counts);
      near(fit.at(3.3, 1), -1 + 3.3 - 0.3 * 3.3 ** 2, 1e-12);
      near(fit.at(3.3, 3), -0.6, 1e-12);
    }
  });

  it('weighs a mean of four readings like the four readings', () => {
    const fine = fitPolynomial(
      Float64Array.from([0, 0, 0, 0, 1, 2, 3]),
      Float64Array.from([1, 1, 1, 1, 5, 2, 8]),
      0,
      7,
      2,
    );
    const coarse = fitPolynomial(
      Float64Array.from([0, 1, 2, 3]),
      Float64Array.from([1, 5, 2, 8]),
      0,
      4,
      2,
      Float64Array.from([4, 1, 1, 1]),
    );
    for (const t of [0, 1.5, 3]) near(coarse.at(t), fine.at(t), 1e-12);
  });
});

describe('A local polynomial', () => {
  // Savitzky and Golay, Anal. Chem. 36 (1964) 1627, tables (from memory): first derivative, cubic, 5 points; second
  // derivative, quadratic, 5 points; smoothing, quadratic, 7 points.
  const tables = [
    { points: 5, degree: 3, derivative: 1, weights: [1, -8, 0, 8, -1].map((w) => w / 12) },
    { points: 5, degree: 2, derivative: 2, weights: [2, -1, -2, -1, 2].map((w) => w / 7) },
    { points: 7, degree: 2, derivative: 0, weights: [-2, 3, 6, 7, 6, 3, -2].map((w) => w / 21) },
  ];
  // scipy.signal.savgol_coeffs: core-reference.py.
  const scipy = [
    {
      points: 7,
      degree: 3,
      derivative: 1,
      weights: [
        0.08730158730158721, -0.2658730158730158, -0.23015873015873023, 0, 0.23015873015873023, 0.2658730158730159,
        -0.08730158730158737,
      ],
    },
    {
      points: 9,
      degree: 4,
      derivative: 2,
      weights: [
        -0.07342657342657549, 0.21620046620046662, 0.08799533799533735, -0.12296037296037524, -0.21561771561771859,
        -0.12296037296037526, 0.0879953379953374, 0.21620046620046662, -0.07342657342657558,
      ],
    },
    {
      points: 11,
      degree: 5,
      derivative: 1,
      weights: [
        -0.03339160839160847, 0.1262237762237765, -0.0727855477855483, -0.2199300699300696, -0.1797202797202795, 0,
        0.17972027972027954, 0.2199300699300698, 0.07278554778554788, -0.12622377622377612, 0.0333916083916084,
      ],
    },
  ];
  for (const { points, degree, derivative, weights } of [...tables, ...scipy]) {
    it(`has on an even grid the published weights: ${points} points, degree ${degree}, derivative ${derivative}`, () => {
      const x = Float64Array.from({ length: 31 }, (_, i) => i);
      const fit = localPolynomial(curve(x, x), 15, points - 1, degree);
      const found = fit.functional(15, derivative);
      assert.equal(found.weights.length, points);
      weights.forEach((w, i) => {
        near(found.weights[i], w, 1e-12);
      });
    });
  }

  it('is widened to the nearest readings where its width holds too few', () => {
    const x = Float64Array.from({ length: 20 }, (_, i) => 60 * i);
    const fit = localPolynomial(
      curve(
        x,
        x.map((v) => v ** 3),
      ),
      600,
      30,
      3,
    );
    assert.deepEqual([fit.first, fit.last], [8, 13]);
    near(fit.at(600, 1), 3 * 600 ** 2, 1e-6);
  });

  it('takes one side only at an end of the data', () => {
    const x = Float64Array.from({ length: 20 }, (_, i) => i);
    const fit = localPolynomial(
      curve(
        x,
        x.map((v) => v * v),
      ),
      0,
      8,
      3,
    );
    assert.equal(fit.first, 0);
    near(fit.at(0, 1), 0, 1e-9);
  });

  it('does not care where time starts: moved by 1e9 s the slope is the same', () => {
    const random = seeded(3);
    const y = whiteNoise(200, 1, random);
    const x = Float64Array.from({ length: 200 }, (_, i) => i * 0.25);
    const moved = curve(
      x.map((t) => t + 1e9),
      y,
    );
    const here = localPolynomial(curve(x, y), 20, 5, 3).at(20, 1);
    near(localPolynomial(moved, 20 + 1e9, 5, 3).at(20 + 1e9, 1), here, 1e-9 * Math.abs(here));
  });
});

describe('The derivative of a curve', () => {
  it('scans with the same slope that the local polynomial has', () => {
    const random = seeded(7);
    for (let trial = 0; trial < 100; trial++) {
      const n = 5 + random.integer(30);
      const x = Float64Array.from({ length: n }, (_, i) => 50 + i + 0.7 * random.uniform());
      const y = whiteNoise(n, 2, random);
      const centre = x[0] + random.uniform() * (x[n - 1] - x[0]);
      const slow = fitPolynomial(x, y, 0, n, 3).at(centre, 1);
      near(localSlope(x, y, 0, n, centre), slow, 1e-8 * (1 + Math.abs(slow)));
    }
  });

  it('is exact for a cubic, on its own grid and on averages', () => {
    const x = Float64Array.from({ length: 4000 }, (_, i) => i * 0.1);
    const y = x.map((t) => 1e-5 * t ** 3 - 0.01 * t);
    const exact = (t: number): number => 3e-5 * t ** 2 - 0.01;
    const { x: grid, slope, size } = slopeCurve(curve(x, y), { from: 100, to: 300 }, 30);
    assert.ok(size > 1 && grid.length < 200);
    // Averaging a block of b seconds lifts the cubic by its third derivative times b squared over 24.
    grid.forEach((t, i) => {
      near(slope[i], exact(t), (6e-5 * (size * 0.1) ** 2) / 24 + 1e-12);
    });
    near(slopeAt(curve(x, y), 222.2, 30, null).value, exact(222.2), 1e-10);
    const fine = slopeCurve(curve(x, y), { from: 100, to: 110 }, 0.5);
    assert.equal(fine.size, 1);
    fine.x.forEach((t, i) => {
      near(fine.slope[i], exact(t), 1e-9);
    });
  });

  it('has a grid that does not depend on the window', () => {
    const random = seeded(5);
    const x = Float64Array.from({ length: 5000 }, (_, i) => i * 0.1);
    const run = curve(x, whiteNoise(5000, 1, random));
    const wide = slopeCurve(run, { from: 50, to: 450 }, 20);
    const narrow = slopeCurve(run, { from: 211.3, to: 300.7 }, 20);
    const first = wide.x.indexOf(narrow.x[0]);
    narrow.slope.forEach((s, i) => {
      assert.equal(s, wide.slope[first + i]);
    });
  });
});
