import assert from 'node:assert/strict';
import { exact, isDefined, withU } from '../../server/src/quantities/arithmetic';
import { effectiveDof } from '../../server/src/quantities/effectiveDof';
import { abs, cos, exp, ln, max, mean, min, rsd, sd, sin, sqrt } from '../../server/src/quantities/functions';
import { propagate } from '../../server/src/quantities/propagate';
import { contributions, standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import { seeded } from '../support/random';
import { near, nearRelative } from './near';

/** Twenty readings of a temperature, °C: JCGM 100:2008, table 1 (4.4.3); mean 100.145, s = 1.489, s/√20 = 0.333 there. */
const readings = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
  101.57, 101.84, 102.36, 102.72,
];

describe('functions of the language', () => {
  it('mean and sd of the readings in JCGM 100 table 1 are 100.145 and 1.489', () => {
    const xs = readings.map(exact);
    near(mean(xs).value, 100.145, 0.0005);
    near(sd(xs, 'scatter').value, 1.489, 0.0005);
    near(sd(xs, 'scatter').value / Math.sqrt(20), 0.333, 0.0005);
  });

  it('sd carries u = s/√(2(n-1)): 24, 16, 13, 10 % for 10, 20, 30, 50 values (JCGM 100, table E.1)', () => {
    for (const [n, percent] of [
      [10, 24],
      [20, 16],
      [30, 13],
      [50, 10],
    ] as const) {
      const s = sd(
        Array.from({ length: n }, (_, i) => exact(i % 3)),
        'scatter',
      );
      near((100 * standardUncertainty(s)) / s.value, percent, 0.5);
      assert.equal(effectiveDof(s), n - 1);
    }
    assert.ok(!isDefined(sd([exact(1)], 'scatter')));
  });

  it('sd does not lose digits on values far from zero', () => {
    const far = sd(
      readings.map((x) => exact(x + 1e9)),
      'scatter',
    ).value;
    near(far, sd(readings.map(exact), 'scatter').value, 1e-6);
  });

  it('the u of sd is the scatter of standard deviations of drawn samples', () => {
    const random = seeded(51);
    for (const n of [4, 10, 30]) {
      const draws = Array.from({ length: 4000 }, () => {
        return sd(
          Array.from({ length: n }, () => exact(random.normal())),
          's',
        ).value;
      });
      const average = draws.reduce((sum, s) => sum + s, 0) / draws.length;
      const scatter = Math.sqrt(draws.reduce((sum, s) => sum + (s - average) ** 2, 0) / (draws.length - 1));
      // The formula is the large-n one: 5 % high at n = 4 (JCGM 100, table E.1).
      nearRelative(1 / Math.sqrt(2 * (n - 1)), scatter, n === 4 ? 0.08 : 0.05);
    }
  });

  it('mean of values that share an influence does not average it away', () => {
    const xs = [1, 2, 3, 4].map((v, i) => ({
      value: v,
      parts: [
        { input: 'mass scale', u: 0.1, dof: null },
        { input: `noise ${i}`, u: 0.1, dof: null },
      ],
    }));
    near(standardUncertainty(mean(xs)), Math.hypot(0.1, 0.05), 1e-15);
  });

  it('rsd is sd over the mean and needs a mean', () => {
    near(rsd([9, 10, 11].map(exact), 's').value, 0.1, 1e-15);
    assert.ok(!isDefined(rsd([-1, 1].map(exact), 's')));
  });

  it('min and max take the gradient of the one chosen, of equals the most uncertain, in any order', () => {
    const low = withU(1, 0.1, 'low', null);
    const high = withU(2, 0.2, 'high', null);
    const same = withU(2, 0.5, 'same', null);
    assert.deepEqual(min([high, low]), low);
    assert.deepEqual(max([low, high, same]), same);
    assert.deepEqual(max([same, low, high]), same);
    assert.ok(!isDefined(min([])));
  });

  it('slopes of sqrt, ln, exp, abs, sin, cos agree with numerical ones', () => {
    const cases: readonly (readonly [
      (x: ReturnType<typeof exact>) => ReturnType<typeof exact>,
      (x: number) => number,
      number,
    ])[] = [
      [sqrt, Math.sqrt, 2.5],
      [ln, Math.log, 2.5],
      [exp, Math.exp, 0.7],
      [abs, Math.abs, -2.5],
      [sin, Math.sin, 0.7],
      [cos, Math.cos, 0.7],
    ];
    for (const [f, plain, at] of cases) {
      const x = withU(at, 0.01, 'x', null);
      const numerical = propagate(([v]) => plain(v!), [x]);
      near(f(x).value, numerical.value, 1e-15);
      near(f(x).parts[0]!.u, numerical.parts[0]!.u, 1e-11);
    }
  });

  it('what is undefined says so: root of a negative, logarithm of zero, slope of a root at an uncertain zero', () => {
    assert.ok(!isDefined(sqrt(exact(-1))));
    assert.ok(!isDefined(ln(exact(0))));
    assert.ok(!isDefined(sqrt(withU(0, 0.1, 'x', null))));
    assert.ok(isDefined(sqrt(exact(0))));
    assert.deepEqual(contributions(sqrt(withU(0, 0, 'x', null))), [{ input: 'x', u: 0 }]);
  });

  it('propagate shortens its step inside the domain of f and costs no call for exact inputs', () => {
    const small = propagate(([x]) => Math.log(x!), [withU(0.01, 0.02, 'x', null)]);
    nearRelative(small.parts[0]!.u, 2, 1e-6);
    let calls = 0;
    propagate(([x, y]) => (calls++, x! + y!), [exact(1), exact(2)]);
    assert.equal(calls, 1);
  });
});
