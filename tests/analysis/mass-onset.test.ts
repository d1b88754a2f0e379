import assert from 'node:assert/strict';
import { crossing } from '../../server/src/analysis/crossing';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { extrapolatedOnset } from '../../server/src/analysis/extrapolatedOnset';
import { residueLevel } from '../../server/src/analysis/residueLevel';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import { firstOrderRun, near, noisy, tFactor } from './massCurves';

function curveOf(y: readonly number[]): Curve {
  return checkedCurve(
    Float64Array.from(y, (_, i) => i),
    Float64Array.from(y),
  )!;
}

describe('An extrapolated onset', () => {
  const bent = curveOf(Array.from({ length: 41 }, (_, i) => 1 + 0.1 * i + 0.5 * Math.max(0, Math.min(12, i - 15))));
  const options = { span: 8, smooth: 5, noise: null };

  it('is where the first line meets the steepest tangent', () => {
    const found = extrapolatedOnset(bent, { from: 2, to: 36 }, options);
    near(found?.onset.value, 15, 1e-9);
  });

  it('is the same for a signal that falls', () => {
    const { x, y } = bent;
    const found = extrapolatedOnset(
      checkedCurve(
        x,
        y.map((v) => -v),
      )!,
      { from: 2, to: 36 },
      options,
    );
    near(found?.onset.value, 15, 1e-9);
  });

  it('is none where the window holds too little or only a line', () => {
    assert.equal(extrapolatedOnset(bent, { from: 2, to: 4 }, options), null);
    const flat = curveOf(Array.from({ length: 40 }, () => 7));
    assert.equal(extrapolatedOnset(flat, { from: 2, to: 36 }, options), null);
  });

  it('of an exact mass step is the start of the step within 0.02 K, and far from the 10 % crossing', function () {
    const run = firstOrderRun(needReference(this), 10);
    const { window, truth } = run.steps[0];
    const found = extrapolatedOnset(run.curve, window, { span: 60, smooth: 30, noise: null });
    near(found?.onset.value, truth.start!, 0.02 / run.rate);
    const tenth = crossing(run.curve, window, {
      of: 'rate',
      level: { share: 0.1, of: 'maximum' },
      way: 'either',
      which: 'first',
      smooth: 30,
      noise: null,
    });
    assert.ok(tenth !== null && (truth.start! - tenth.at.value) * run.rate > 15);
  });

  it('is within its uncertainty of the exact one in 90 % of 200 draws of noise', function () {
    const run = firstOrderRun(needReference(this), 10);
    const { window, truth } = run.steps[0];
    for (const draw of [whiteNoise, pinkNoise]) {
      let inside = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const curve = noisy(run.curve, draw(run.curve.x.length, 5e-4, seeded(seed)));
        const noise = estimateNoise(curve);
        const found = extrapolatedOnset(curve, window, { span: 60, smooth: 30, noise });
        assert.ok(found !== null);
        if (Math.abs(found.onset.value - truth.start!) <= tFactor(found.onset.dof) * found.onset.noise) inside++;
      }
      assert.ok(inside >= 180, `${inside} of 200`);
    }
  });
});

describe('A residue', () => {
  it('is the mean of the readings about its time and their slope, at an end of the data the half of them that is there', () => {
    const curve = curveOf([9, 8, 6, 4, 3, 2]);
    const middle = residueLevel(curve, 2, 2, null);
    assert.deepEqual([middle?.level.value, middle?.drift.value, middle?.readings], [6, -2, 3]);
    const end = residueLevel(curve, 5, 4, null);
    assert.deepEqual([end?.level.value, end?.readings, end?.from, end?.to], [3, 3, 3, 5]);
    assert.equal(residueLevel(curve, 5.1, 4, null), null);
  });

  it('is within its uncertainty of the true level in 90 % of 200 draws of noise', () => {
    const x = Float64Array.from({ length: 1000 }, (_, i) => 3 * i);
    const clean = checkedCurve(
      x,
      x.map(() => 3),
    )!;
    for (const draw of [whiteNoise, pinkNoise]) {
      let inside = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const curve = noisy(clean, draw(1000, 0.01, seeded(seed)));
        const found = residueLevel(curve, 2000, 30, estimateNoise(curve));
        assert.ok(found !== null);
        if (Math.abs(found.level.value - 3) <= tFactor(found.level.dof) * found.level.noise) inside++;
      }
      assert.ok(inside >= 180, `${inside} of 200`);
    }
  });
});
