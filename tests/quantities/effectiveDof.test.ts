import assert from 'node:assert/strict';
import { add, exact, scale, withU } from '../../server/src/quantities/arithmetic';
import { correlated } from '../../server/src/quantities/correlated';
import { coverageFactor } from '../../server/src/quantities/coverageFactor';
import { effectiveDof } from '../../server/src/quantities/effectiveDof';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { seeded, type Random } from '../support/random';
import { near } from './near';

/** Mean of `n` normal readings about `truth`, as an uncertain number with n - 1 degrees of freedom. */
function measured(truth: number, sigma: number, n: number, name: string, random: Random): Uncertain {
  const xs = Array.from({ length: n }, () => truth + sigma * random.normal());
  const mean = xs.reduce((sum, x) => sum + x, 0) / n;
  const s = Math.sqrt(xs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1));
  return withU(mean, s / Math.sqrt(n), name, n - 1);
}

/** Share of draws in which |value - truth| ≤ k·u. */
function coverage(draws: number, truth: number, draw: () => Uncertain): number {
  let inside = 0;
  for (let i = 0; i < draws; i++) {
    const y = draw();
    if (Math.abs(y.value - truth) <= coverageFactor(effectiveDof(y)) * standardUncertainty(y)) inside++;
  }
  return inside / draws;
}

describe('effective degrees of freedom (JCGM 100, G.4.1)', () => {
  it('JCGM 100 G.4.1 example: 0.25 %, 0.57 %, 0.82 % with 9, 4, 14 give 19.0, and t95(19) is 2.09', () => {
    const y = [withU(0, 0.25, 'x1', 9), withU(0, 0.57, 'x2', 4), withU(0, 0.82, 'x3', 14)].reduce(add);
    near(standardUncertainty(y), 1.03, 0.005);
    near(effectiveDof(y) ?? NaN, 19.0, 0.05);
    near(coverageFactor(19), 2.09, 0.005);
  });

  it('is null where everything has many, and where nothing contributes', () => {
    assert.equal(effectiveDof(withU(1, 0.1, 'x', null)), null);
    assert.equal(effectiveDof(exact(1)), null);
    assert.equal(effectiveDof(withU(1, 0, 'x', 3)), null);
  });

  it('counts one input once however often it enters', () => {
    const x = withU(1, 0.1, 'x', 7);
    near(effectiveDof(add(x, scale(x, 2))) ?? NaN, 7, 1e-12);
  });

  it('counts values from the same observations as one group', () => {
    const pair = correlated(
      [1, 2],
      [0.1, 0.2],
      [
        [1, 0.3],
        [0.3, 1],
      ],
      ['p', 'q'],
      [4, 4],
    );
    assert.ok(pair.ok);
    near(effectiveDof(pair.value.reduce(add)) ?? NaN, 4, 1e-12);
    const apart = correlated(
      [1, 2],
      [0.1, 0.2],
      [
        [1, 0.3],
        [0.3, 1],
      ],
      ['p', 'q'],
      [4, 9],
    );
    assert.ok(apart.ok);
    assert.ok((effectiveDof(apart.value.reduce(add)) ?? 0) > 4);
  });
});

describe('U = k·u covers the truth in 95 % of 20 000 draws (binomial standard deviation 0.15 %)', () => {
  for (const n of [3, 4, 6, 10]) {
    it(`mean of ${n} readings: 95 %`, () => {
      const random = seeded(60 + n);
      near(
        coverage(20000, 5, () => measured(5, 1, n, 'x', random)),
        0.95,
        0.006,
      );
    });
  }

  it('sum of two means of 3 and 8 readings and a certificate: 94 to 98 %, for Welch-Satterthwaite is approximate', () => {
    const random = seeded(71);
    const share = coverage(20000, 0, () =>
      [
        measured(0, 1, 3, 'x', random),
        measured(0, 1.5, 8, 'y', random),
        withU(0.3 * random.normal(), 0.3, 'certificate', null),
      ].reduce(add),
    );
    assert.ok(share > 0.94 && share < 0.98, `${share}`);
  });

  it('known normal influences with k = 2: 95.4 %', () => {
    const random = seeded(72);
    near(
      coverage(20000, 0, () => withU(random.normal(), 1, 'x', null)),
      0.9545,
      0.006,
    );
  });

  it('a difference of two values from the same four observation sets: 95 % with their own three degrees of freedom', () => {
    const random = seeded(73);
    const share = coverage(20000, 0, () => {
      const xs = Array.from({ length: 4 }, () => random.normal());
      const ys = xs.map((x) => 0.6 * x + 0.8 * random.normal());
      const [mx, my] = [xs, ys].map((v) => v.reduce((sum, x) => sum + x, 0) / 4) as [number, number];
      const s = (v: number[], m: number, w: number[], o: number): number =>
        v.reduce((sum, x, i) => sum + (x - m) * (w[i]! - o), 0) / 3;
      const ux = Math.sqrt(s(xs, mx, xs, mx) / 4);
      const uy = Math.sqrt(s(ys, my, ys, my) / 4);
      const r = s(xs, mx, ys, my) / 4 / (ux * uy);
      const both = correlated(
        [mx, my],
        [ux, uy],
        [
          [1, r],
          [r, 1],
        ],
        ['x', 'y'],
        [3, 3],
      );
      assert.ok(both.ok);
      return add(both.value[0]!, scale(both.value[1]!, -1));
    });
    near(share, 0.95, 0.006);
  });
});
