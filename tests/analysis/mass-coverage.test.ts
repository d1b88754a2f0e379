import assert from 'node:assert/strict';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import {
  firstOrderRun,
  noisy,
  quantities,
  threeStepRun,
  threeWindows,
  uncertainStep,
  type MassRun,
} from './massCurves';

const DRAWS = 200;
/** Share of the initial mass: a good balance and a poor one. */
const LEVELS = [5e-5, 5e-4];
const KINDS = [
  ['white', whiteNoise],
  ['1/f', pinkNoise],
] as const;

/**
 * JCGM 100 calls U an interval that may be expected to hold 95 % of the values: over 200 draws of noise the exact value must
 * lie in it in 90 to 100 % of them, and u must be 0.7 to 3 times the scatter the draws really have.
 */
function assertCovered(run: MassRun, index: number): void {
  const { window, truth } = run.steps[index];
  for (const level of LEVELS) {
    for (const [kind, draw] of KINDS) {
      const seen = quantities
        .filter((q) => truth[q] !== null)
        .map((q) => ({ q, inside: 0, u: 0, errors: [] as number[] }));
      for (let seed = 0; seed < DRAWS; seed++) {
        const curve = noisy(run.curve, draw(run.curve.x.length, level * run.initial, seeded(1000 + seed)));
        const value = uncertainStep(run, curve, window);
        for (const s of seen) {
          const found = value(s.q);
          if (found === null) continue;
          const error = found.value - truth[s.q]!;
          s.errors.push(error);
          s.u += found.u;
          if (Math.abs(error) <= found.k * found.u) s.inside++;
        }
      }
      for (const { q, inside, u, errors } of seen) {
        const what = `${run.name} ${index + 1}, ${kind} ${100 * level} %, ${q}`;
        const mean = errors.reduce((a, b) => a + b, 0) / errors.length;
        const scatter = Math.sqrt(errors.reduce((a, b) => a + (b - mean) ** 2, 0) / (errors.length - 1));
        assert.equal(errors.length, DRAWS, `${what}: found in every draw`);
        assert.ok(inside >= 0.9 * DRAWS, `${what}: the truth lies within U in ${inside} of ${DRAWS}`);
        const ratio = u / DRAWS / scatter;
        assert.ok(ratio >= 0.7 && ratio <= 3, `${what}: mean u is ${ratio.toFixed(2)} of the scatter`);
      }
    }
  }
}

describe('The uncertainty of a mass step holds the exact value in 90 to 100 % of 200 draws, for every quantity', () => {
  let folder = '';
  before(function () {
    folder = needReference(this);
  });

  for (const kelvinPerMinute of [2, 5, 10, 20]) {
    it(`first order at ${kelvinPerMinute} K/min, white and 1/f noise of 0.005 and 0.05 %`, function () {
      this.timeout(300_000);
      assertCovered(firstOrderRun(folder, kelvinPerMinute), 0);
    });
  }
  threeWindows.forEach(([from, to], i) => {
    it(`three steps, ${from}..${to} °C, white and 1/f noise of 0.005 and 0.05 %`, function () {
      this.timeout(300_000);
      assertCovered(threeStepRun(folder), i);
    });
  });
});
