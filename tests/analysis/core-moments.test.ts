import assert from 'node:assert/strict';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { pastLine } from '../../server/src/analysis/extremes';
import { apply, squaresApart, sumOf, meanFunctional } from '../../server/src/analysis/functional';
import { momentsOf } from '../../server/src/analysis/moments';
import { noiseOf, varianceOf, type Noise } from '../../server/src/analysis/noise';
import { passages } from '../../server/src/analysis/passage';
import { fitPolynomial } from '../../server/src/analysis/polynomialFit';
import { slopeCurve } from '../../server/src/analysis/slopeCurve';
import { steepest } from '../../server/src/analysis/steepest';
import { straightLine } from '../../server/src/analysis/straightLine';
import { seeded, type Random } from '../support/random';

function near(actual: number, expected: number, tolerance: number): void {
  assert.ok(Math.abs(actual - expected) <= tolerance, `${actual} is not ${expected} within ${tolerance}`);
}

/** An uneven grid; a logistic fall of 2 in noise of 0.001. `since` in steps that a number of that size still holds exactly. */
function fallingCurve(random: Random, since = 0, n = 1500): Curve {
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  for (let i = 0, t = 0; i < n; i++, t += (1 + random.integer(3)) / 4) {
    x[i] = since + t;
    y[i] = 20 - 2 / (1 + Math.exp(-(t - 350) / 30)) + 0.001 * random.normal();
  }
  return checkedCurve(x, y)!;
}

/** The textbook's two passes. */
function direct({ x, y }: Curve, first: number, last: number) {
  const count = last - first;
  let mx = 0;
  let my = 0;
  for (let i = first; i < last; i++) {
    mx += (x[i] - x[first]) / count;
    my += (y[i] - y[first]) / count;
  }
  let xx = 0;
  let xy = 0;
  for (let i = first; i < last; i++) {
    xx += (x[i] - x[first] - mx) ** 2;
    xy += (x[i] - x[first] - mx) * (y[i] - y[first] - my);
  }
  return { count, x: mx, y: my, xx, xy };
}

describe('Moments put together from blocks', () => {
  for (const since of [0, 1e9]) {
    it(`are those of two passes over the readings, for any range, with time from ${since} s`, () => {
      const random = seeded(11);
      const curve = fallingCurve(random, since);
      for (let round = 0; round < 300; round++) {
        const first = random.integer(curve.x.length - 2);
        const last = first + 2 + random.integer(curve.x.length - first - 1);
        const [made, due] = [momentsOf(curve, first, last), direct(curve, first, last)];
        assert.equal(made.count, due.count);
        near(made.x, due.x, 1e-11 * (1 + due.x));
        near(made.y, due.y, 1e-12);
        near(made.xx, due.xx, 1e-12 * due.xx);
        near(made.xy, due.xy, 1e-11 * Math.sqrt(due.xx * due.count));
      }
    });
  }

  it('do not depend on which ranges were asked for before', () => {
    const [a, b] = [fallingCurve(seeded(11)), fallingCurve(seeded(11))];
    momentsOf(b, 0, 1500);
    momentsOf(b, 65, 700);
    assert.deepEqual(momentsOf(a, 3, 900), momentsOf(b, 3, 900));
  });

  it('give the straight line that the polynomial of first degree is, with its weights', () => {
    const curve = fallingCurve(seeded(12), 1e9);
    for (const [first, last] of [
      [0, 2],
      [10, 40],
      [37, 1211],
    ] as const) {
      const line = straightLine(curve, first, last);
      const fit = fitPolynomial(curve.x, curve.y, first, last, 1);
      const t = curve.x[last - 1] + 3;
      near(line.slope, fit.at(t, 1), 1e-10);
      near(line.at(t), fit.at(t), 1e-9);
      near(apply(line.functional(t), curve.y), line.at(t), 1e-9);
      near(apply(line.slopeFunctional, curve.y), line.slope, 1e-10);
    }
  });
});

describe('Weights made only when asked for', () => {
  const curve = fallingCurve(seeded(13));
  const { x, y } = curve;
  const white: Noise = { sigma: 0.01, resolution: 0, components: [{ variance: 1e-4, time: 0 }], dof: null };

  it('have the sum of squares that is stated of them', () => {
    const cubic = fitPolynomial(x, y, 100, 400, 3);
    const line = straightLine(curve, 500, 900);
    for (const of of [
      cubic.functional(x[200]),
      cubic.functional(x[150], 1),
      cubic.tangent(x[210], x[300]),
      line.functional(x[20]),
      line.slopeFunctional,
      meanFunctional(3, 77),
    ]) {
      const sum = of.weights.reduce((a, w) => a + w * w, 0);
      near(of.known!.squares, sum, 1e-11 * sum);
      assert.equal(of.known!.count, of.weights.length);
    }
  });

  it('of a tangent give value and slope at its point of contact', () => {
    const fit = fitPolynomial(x, y, 100, 400, 3);
    near(apply(fit.tangent(x[210], x[300]), y), fit.at(x[210]) + (x[300] - x[210]) * fit.at(x[210], 1), 1e-10);
  });

  it('give white noise the variance that the weights themselves give, apart and overlapping', () => {
    const [a, b, c] = [
      meanFunctional(0, 200),
      meanFunctional(300, 350),
      straightLine(curve, 150, 320).functional(x[10]),
    ];
    for (const terms of [
      [
        { times: 1, of: a },
        { times: -2, of: b },
      ],
      [
        { times: -2, of: b },
        { times: 1, of: a },
      ],
      [
        { times: 1, of: a },
        { times: 3, of: c },
        { times: -2, of: b },
      ],
    ]) {
      const due = Math.sqrt(varianceOf(white, x, sumOf(terms)));
      near(noiseOf(white, x, terms), due, 1e-12 * due);
    }
    assert.equal(
      squaresApart([
        { times: 1, of: a },
        { times: 3, of: c },
      ]),
      null,
    );
  });
});

describe('Blocks passed by their extremes', () => {
  it('leave the same passages through any straight line as looking at every reading', () => {
    const random = seeded(14);
    const curve = fallingCurve(random);
    const { x, y } = curve;
    let found = 0;
    for (let round = 0; round < 200; round++) {
      const line = {
        origin: 17.9 + 2.3 * random.uniform(),
        slope: 0.002 * random.normal(),
        centre: 100 + 500 * random.uniform(),
      };
      const band = random.integer(2) * 0.002;
      const off = (i: number): number => y[i] - line.origin - line.slope * (x[i] - line.centre);
      const first = random.integer(600);
      const last = first + 2 + random.integer(1500 - first - 1);
      const every = passages(x, off, first, last, band);
      assert.deepEqual(
        passages(x, off, first, last, band, 0, (i, below) => pastLine(curve, i, below, line)),
        every,
      );
      found += every.length;
    }
    assert.ok(found > 100, `${found}`);
  });
});

describe('What is kept with a curve', () => {
  it('changes no number: slopes and steepest points are the same whatever was asked for before', () => {
    const noise: Noise = { sigma: 0.001, resolution: 0, components: [{ variance: 1e-6, time: 0 }], dof: 20 };
    const used = fallingCurve(seeded(15));
    const random = seeded(16);
    for (let round = 0; round < 40; round++) {
      const from = 300 * random.uniform();
      const window = { from, to: from + 20 + (700 - from) * random.uniform() };
      const smooth = 8 + 30 * random.uniform();
      const fresh = fallingCurve(seeded(15));
      assert.deepEqual(slopeCurve(used, window, smooth), slopeCurve(fresh, window, smooth));
      const [a, b] = [used, fresh].map((curve) => steepest(curve, window, 'falling', { smooth, noise }));
      assert.deepEqual([a?.time, a?.slope, a?.tangent(7)], [b?.time, b?.slope, b?.tangent(7)]);
    }
  });
});
