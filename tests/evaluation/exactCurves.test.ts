import assert from 'node:assert/strict';
import { needReference } from '../support/reference';
import { exactCurves, massCurve, answersOf, type ExactCurve } from './exactCurves';
import { evaluateOn, resultOf, valueOf } from './onArrays';

// Truths: closed forms evaluated with 40 digits (answers.json of the reference folder).
describe('exact curves with default settings', () => {
  let folder = '';
  let curves: ExactCurve[] = [];
  before(function () {
    folder = needReference(this);
    curves = exactCurves(folder);
  });

  it('every quantity lies within its bound of the exact answer', () => {
    for (const curve of curves) {
      const evaluated = evaluateOn(curve.columns, curve.gloss, curve.name);
      for (const { id, truth, within } of curve.truths) {
        const off = valueOf(evaluated, id) - truth;
        assert.ok(Math.abs(off) <= within, `${curve.name}, ${id}: off by ${off}, allowed ${within}`);
      }
    }
  });

  it('a straight baseline under the stepped peak is wrong by the known 38.7 %, so the sigmoid is what reaches the area', () => {
    const stepped = curves.find((c) => c.name === 'peak on a step')!;
    const straight = valueOf(evaluateOn(stepped.columns, stepped.gloss.replace('sigmoidal', 'linear')), 'P.enthalpy');
    // answers.json b2: relative error of the straight line +0.387266 between 150 and 180 °C.
    assert.ok(Math.abs(straight / 28.6624 - 1 - 0.387266) < 0.002, `straight gives ${straight}`);
  });

  it('windows found by `around` give each of three steps within 0.05 %', () => {
    const columns = massCurve(folder, 'e_three_step.csv');
    const losses = answersOf(folder).e_three_step.step_loss_percent;
    const gloss = 'run "e.csv"\nstep First around 154 °C\nstep Second around 480 °C\nstep Third around 826 °C\n';
    const evaluated = evaluateOn(columns, gloss, 'around');
    for (const [i, name] of ['First', 'Second', 'Third'].entries()) {
      const loss = valueOf(evaluated, `${name}.loss`);
      assert.ok(Math.abs(loss - losses[i]) <= 0.05, `${name}: ${loss} instead of ${losses[i]}`);
    }
  });

  it('windows 5 K tighter at both ends still hold the truth within U', () => {
    for (const curve of curves) {
      const tighter = curve.gloss.replace(
        /(\d+)\.\.(\d+) °C/g,
        (_, a: string, b: string) => `${Number(a) + 5}..${Number(b) - 5} °C`,
      );
      const evaluated = evaluateOn(curve.columns, tighter, `${curve.name}, tighter`);
      for (const { id, truth, within } of curve.truths) {
        const result = resultOf(evaluated, id);
        const U = result.k * (result.uncertainty ?? 0);
        const off = Math.abs((result.value ?? NaN) - truth);
        assert.ok(off <= Math.max(U, within), `${curve.name}, ${id}: off by ${off}, U ${U}`);
      }
    }
  });
});
