import assert from 'node:assert/strict';
import { aroundStep } from '../../server/src/analysis/aroundStep';
import { checkedCurve, type Curve, type Window } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import type { Noise } from '../../server/src/analysis/noise';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import { levelSlope, near, noisy, stepOf, threeStepRun, uncertainStep, type MassRun } from './massCurves';

/** The rule at the default settings; the third step is 370 K wide between its flat ends and needs a longer reach. */
function around(run: MassRun, curve: Curve, noise: Noise | null, celsius: number, within = 150): Window | null {
  return aroundStep(curve, noise, {
    at: run.timeAt(celsius),
    within: within / run.rate,
    span: 10 / run.rate,
    levelSlope: levelSlope(run),
    relativeRate: 0.02,
    smooth: 5 / run.rate,
  });
}

const points: readonly { readonly celsius: number; readonly step: number; readonly within: number }[] = [
  { celsius: 150, step: 0, within: 150 },
  { celsius: 480, step: 1, within: 150 },
  { celsius: 826, step: 2, within: 300 },
];

describe('The window around a point of a mass step, on exact curves', () => {
  let run: MassRun;
  before(function () {
    run = threeStepRun(needReference(this));
  });

  for (const { celsius, step, within } of points) {
    it(`around ${celsius} °C within ${within} K holds the step within 0.05 % of the mass`, () => {
      const window = around(run, run.curve, estimateNoise(run.curve), celsius, within);
      assert.ok(window !== null);
      near(stepOf(run, run.curve, window, null).change.value, run.steps[step].truth.change!, 5e-4 * run.initial);
    });
  }

  it('is the same from any point of the step, its feet included', () => {
    const windows = [100, 130, 150, 165].map((celsius) => around(run, run.curve, null, celsius));
    for (const window of windows) {
      near(window?.from, windows[0]?.from ?? NaN, 1);
      near(window?.to, windows[0]?.to ?? NaN, 1);
    }
  });

  it('is not found where a side has no level stretch within reach', () => {
    assert.equal(around(run, run.curve, null, 826, 100), null);
  });

  it('is not found where nothing happens within reach', () => {
    const flat = checkedCurve(
      run.curve.x,
      run.curve.x.map((t) => 12 - 1e-6 * t),
    )!;
    assert.equal(around(run, flat, null, 500), null);
  });

  // 200 draws of noise: what the window does to the step must be less than what its uncertainty says.
  for (const { celsius, step, within } of points) {
    for (const [kind, draw] of [
      ['white', whiteNoise],
      ['1/f', pinkNoise],
    ] as const) {
      it(`around ${celsius} °C scatters by less than 3 K over 200 draws of ${kind} noise of 0.005 %, its step stays within U`, function () {
        this.timeout(120_000);
        const clean = around(run, run.curve, null, celsius, within);
        assert.ok(clean !== null);
        const exact = stepOf(run, run.curve, clean, null).change.value;
        const ends: number[][] = [[], []];
        let inside = 0;
        for (let seed = 1; seed <= 200; seed++) {
          const curve = noisy(run.curve, draw(run.curve.x.length, 5e-5 * run.initial, seeded(seed)));
          const window = around(run, curve, estimateNoise(curve), celsius, within);
          assert.ok(window !== null, `seed ${seed}`);
          ends[0].push(window.from * run.rate);
          ends[1].push(window.to * run.rate);
          const change = uncertainStep(run, curve, window)('change');
          assert.ok(change !== null);
          if (Math.abs(change.value - exact) <= change.k * change.u) inside++;
          near(change.value, run.steps[step].truth.change!, 5e-4 * run.initial, `seed ${seed}`);
        }
        for (const values of ends) {
          const mean = values.reduce((a, b) => a + b, 0) / values.length;
          const scatter = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
          assert.ok(scatter < 3, `${scatter.toFixed(2)} K`);
        }
        assert.ok(inside >= 180, `within U in ${inside} of 200`);
      });
    }
  }
});

describe('The window around a point', () => {
  /** 10 mg, a step of 3 mg about 1000 s and one of 0.02 mg about 1500 s. */
  const x = Float64Array.from({ length: 3000 }, (_, i) => i);
  const curve = checkedCurve(
    x,
    x.map((t) => 10 - 3 / (1 + Math.exp((1000 - t) / 20)) - 0.02 / (1 + Math.exp((1500 - t) / 10))),
  )!;
  const options = { at: 1000, within: 900, span: 60, levelSlope: 8e-5, relativeRate: 0.02, smooth: 30 };

  it('ends before the next step, however small', () => {
    const window = aroundStep(curve, null, options);
    assert.ok(window !== null && window.from < 850 && window.to > 1150 && window.to < 1460, JSON.stringify(window));
  });

  it('moves with the curve: 1e9 s later it is 1e9 s later', () => {
    const later = checkedCurve(
      x.map((t) => t + 1e9),
      curve.y,
    )!;
    const here = aroundStep(curve, null, options);
    const there = aroundStep(later, null, { ...options, at: 1000 + 1e9 });
    near(there?.from, (here?.from ?? 0) + 1e9, 1e-3);
    near(there?.to, (here?.to ?? 0) + 1e9, 1e-3);
  });

  it('never lies farther than asked', () => {
    const window = aroundStep(curve, null, { ...options, within: 180 });
    assert.ok(window !== null);
    assert.ok(window.from >= 820 - 1e-9 && window.to <= 1180 + 1e-9);
  });
});
