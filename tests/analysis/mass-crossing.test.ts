import assert from 'node:assert/strict';
import { join } from 'node:path';
import { crossing, type Crossing, type CrossingOptions } from '../../server/src/analysis/crossing';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference, readAnswers, readColumns } from '../support/reference';
import { firstOrderRun, near, noisy, tFactor, type MassRun } from './massCurves';

const plain: CrossingOptions = {
  of: 'signal',
  level: { value: 0 },
  way: 'either',
  which: 'first',
  smooth: 5,
  noise: null,
};

function curveOf(y: readonly number[]): Curve {
  return checkedCurve(
    Float64Array.from(y, (_, i) => i),
    Float64Array.from(y),
  )!;
}

function at(found: Crossing | null): number {
  assert.ok(found !== null);
  return found.at.value;
}

describe('A crossing of a signal', () => {
  const zigzag = curveOf([0, 4, 0, -4, 0, 4, 0]);
  const window = { from: 0, to: 6 };

  it('is exact between two readings, first or last, rising or falling', () => {
    const where = (options: Partial<CrossingOptions>): number =>
      at(crossing(zigzag, window, { ...plain, level: { value: 1 }, ...options }));
    assert.equal(where({}), 0.25);
    assert.equal(where({ way: 'falling' }), 1.75);
    assert.equal(where({ which: 'last' }), 5.75);
    assert.equal(where({ way: 'rising', which: 'last' }), 4.25);
  });

  it('may be at a share of the largest or the smallest value in the window', () => {
    const found = crossing(zigzag, window, { ...plain, level: { share: 0.5, of: 'maximum' } });
    assert.deepEqual([found?.at.value, found?.level], [0.5, 2]);
    assert.equal(at(crossing(zigzag, window, { ...plain, level: { share: 0.5, of: 'minimum' } })), 2.5);
    assert.equal(crossing(zigzag, { from: 0, to: 1 }, { ...plain, level: { share: 0.5, of: 'minimum' } }), null);
  });

  it('is none where the window never passes the level, or not in that way', () => {
    assert.equal(crossing(zigzag, window, { ...plain, level: { value: 5 } }), null);
    assert.equal(crossing(zigzag, { from: 0, to: 1 }, { ...plain, level: { value: 1 }, way: 'falling' }), null);
    assert.equal(crossing(zigzag, { from: 0.2, to: 0.8 }, plain), null);
  });

  it('shows the level it passed and where', () => {
    const found = crossing(zigzag, window, { ...plain, level: { value: 1 } });
    assert.deepEqual(found?.shapes, [
      {
        shape: 'line',
        role: 'level',
        points: [
          [0, 1],
          [6, 1],
        ],
      },
      { shape: 'mark', quantity: 'temperature', at: [0.25, 1] },
    ]);
    assert.equal(found.smoothed, false);
  });

  it('under noise is one passage, within its uncertainty of the clean one in 90 % of 200 draws', () => {
    const x = Float64Array.from({ length: 2000 }, (_, i) => 0.5 * i);
    const clean = checkedCurve(
      x,
      x.map((t) => 10 - 0.01 * t),
    )!;
    for (const draw of [whiteNoise, pinkNoise]) {
      let inside = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const curve = noisy(clean, draw(2000, 0.02, seeded(seed)));
        const noise = estimateNoise(curve);
        const found = crossing(curve, { from: 50, to: 950 }, { ...plain, level: { value: 5 }, smooth: 30, noise });
        assert.ok(found !== null);
        if (Math.abs(found.at.value - 500) <= tFactor(found.at.dof) * found.at.noise) inside++;
      }
      assert.ok(inside >= 180, `${inside} of 200`);
    }
  });

  it('moves with time and not with the unit', () => {
    const { x, y } = zigzag;
    const later = checkedCurve(
      x.map((t) => t + 1e9),
      y,
    )!;
    const options: CrossingOptions = { ...plain, level: { value: 1 } };
    assert.equal(at(crossing(later, { from: 1e9, to: 1e9 + 6 }, options)), 1e9 + 0.25);
    const scaled = checkedCurve(
      x,
      y.map((v) => 1000 * v),
    )!;
    assert.equal(at(crossing(scaled, window, { ...plain, level: { value: 1000 } })), 0.25);
  });
});

describe('A crossing of the mass of an exact first-order run', () => {
  it('at 5, 50 and 95 % of the loss is where the closed form says, within 0.02 K', function () {
    const folder = needReference(this);
    const run = firstOrderRun(folder, 10);
    // Temperatures at a degree of conversion: answers.json, 40 digits.
    const answers = readAnswers(folder).a_first_order as {
      rate: Record<string, { T_at_alpha_K: Record<string, number> }>;
    };
    for (const alpha of ['0.05', '0.5', '0.95']) {
      const level = { value: 10 - 7 * Number(alpha) };
      const found = at(crossing(run.curve, run.steps[0].window, { ...plain, level }));
      near(run.temperatureAt(found), answers.rate['10'].T_at_alpha_K[alpha] - 273.15, 0.02);
    }
  });
});

describe('A crossing of the rate', () => {
  let folder = '';
  let run: MassRun;
  before(function () {
    folder = needReference(this);
    run = firstOrderRun(folder, 10);
  });

  const options: CrossingOptions = { ...plain, of: 'rate', level: { share: 0.1, of: 'maximum' }, smooth: 30 };

  it('at 10 % of its maximum is where the exact rate passes it, on both sides within 0.05 K', () => {
    // The exact rate of the closed form, a column of the file that the evaluation does not read.
    const { time_s: x, dm_dt_mg_per_min: slope } = readColumns(join(folder, 'a_first_order_10Kmin.csv'), [
      'time_s',
      'dm_dt_mg_per_min',
    ]);
    const level = 0.1 * run.steps[0].truth.rate! * 60;
    const exact = [...slope.keys()].filter((i) => i > 0 && -slope[i] > level !== -slope[i - 1] > level);
    assert.equal(exact.length, 2);
    (['first', 'last'] as const).forEach((which, k) => {
      const i = exact[k];
      const truth = x[i - 1] + ((x[i] - x[i - 1]) * (level + slope[i - 1])) / (slope[i - 1] - slope[i]);
      const found = crossing(run.curve, run.steps[0].window, { ...options, which });
      near(found?.at.value, truth, 0.05 / run.rate, which);
      near(found?.level, level / 60, 1e-3 * (level / 60));
      assert.ok(found?.smoothed);
    });
  });

  it('under noise is within its uncertainty of the clean one in 90 % of 200 draws, and early noise makes none', () => {
    const clean = at(crossing(run.curve, run.steps[0].window, options));
    for (const draw of [whiteNoise, pinkNoise]) {
      let inside = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const curve = noisy(run.curve, draw(run.curve.x.length, 5e-4, seeded(seed)));
        const found = crossing(curve, run.steps[0].window, { ...options, noise: estimateNoise(curve) });
        assert.ok(found !== null);
        near(found.at.value, clean, 6 / run.rate, `seed ${seed}`);
        if (Math.abs(found.at.value - clean) <= tFactor(found.at.dof) * found.at.noise) inside++;
      }
      assert.ok(inside >= 180, `${inside} of 200`);
    }
  });

  it('does not happen at a single bad reading, and does where the rate rises for good', () => {
    const spiked = Float64Array.from(run.curve.y);
    spiked[60] -= 0.05;
    const curve = checkedCurve(run.curve.x, spiked)!;
    const clean = at(crossing(run.curve, run.steps[0].window, options));
    const noise = estimateNoise(curve);
    near(at(crossing(curve, run.steps[0].window, { ...options, noise })), clean, 0.1 / run.rate);
  });

  it('is found on a run of many readings where it is on one of few', () => {
    const rate = (n: number): number => {
      const x = Float64Array.from({ length: n }, (_, i) => (1000 * i) / (n - 1));
      const curve = checkedCurve(
        x,
        x.map((t) => 10 - 5 / (1 + Math.exp((500 - t) / 30))),
      )!;
      return at(crossing(curve, { from: 100, to: 900 }, { ...options, smooth: 30 }));
    };
    // A tenth of the maximum of the logistic's rate: 4 e/(1+e)² = 0.1, e = 37.974.
    const truth = 500 - 30 * Math.log(37.97366596);
    near(rate(1001), truth, 0.05);
    near(rate(100_001), truth, 0.05);
  });
});
