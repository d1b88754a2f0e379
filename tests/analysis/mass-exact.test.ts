import assert from 'node:assert/strict';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import {
  firstOrderRun,
  near,
  noisy,
  quantities,
  stepOf,
  threeStepRun,
  threeWindows,
  uncertainStep,
} from './massCurves';

describe('On exact curves, at the default settings, a step', () => {
  let folder = '';
  before(function () {
    folder = needReference(this);
  });

  // Closed forms in 40 digits, checked there by an ordinary differential equation solver: answers.json beside the curves.
  for (const kelvinPerMinute of [2, 5, 10, 20]) {
    it(`of first order at ${kelvinPerMinute} K/min has start, end and inflection within 0.02 K and the rate within 1e-3`, () => {
      const run = firstOrderRun(folder, kelvinPerMinute);
      const { window, truth } = run.steps[0];
      for (const noise of [null, estimateNoise(run.curve)]) {
        const step = stepOf(run, run.curve, window, noise);
        for (const q of ['start', 'end', 'inflection', 'midpoint'] as const)
          near(step[q]?.value, truth[q]!, 0.02 / run.rate, q);
        near(step.rate?.value, truth.rate!, 1e-3 * truth.rate!);
        near(step.change.value, 7, 7e-5);
        assert.equal(step.maxima.count, 1);
      }
    });
  }

  threeWindows.forEach(([from, to], i) => {
    it(`${from}..${to} °C of three loses what the formula says within 0.003 % of the mass`, () => {
      const run = threeStepRun(folder);
      const { window, truth } = run.steps[i];
      const step = stepOf(run, run.curve, window, estimateNoise(run.curve));
      near(step.change.value, truth.change!, 3e-5 * run.initial);
      assert.ok(step.edges.from.level && step.edges.to.level);
    });

    it(`${from}..${to} °C, its window 5 K tighter at both ends, is within the uncertainty`, () => {
      const run = threeStepRun(folder);
      const { window } = run.steps[i];
      const shift = 5 / run.rate;
      const tight = { from: window.from + shift, to: window.to - shift };
      const exact = stepOf(run, run.curve, window, null);
      const noise = whiteNoise(run.curve.x.length, 5e-5 * run.initial, seeded(40 + i));
      const drawn = uncertainStep(run, noisy(run.curve, noise), tight)('change');
      near(drawn?.value, exact.change.value, drawn!.k * drawn!.u, 'change, with noise');
      // Without noise only the edges are uncertain. The first window starts at the data: its level cannot move outward.
      const bare = uncertainStep(run, run.curve, tight);
      for (const q of i === 0 ? (['midpoint', 'inflection'] as const) : quantities) {
        const found = bare(q);
        assert.ok(found !== null);
        near(found.value, exact[q]!.value, found.k * found.u, q);
      }
    });
  });
});
