import assert from 'node:assert/strict';
import { checkedCurve } from '../../server/src/analysis/curve';
import { detectSteps, type DetectedStep } from '../../server/src/analysis/detectSteps';
import type { Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import { firstOrderRun, near, noisy, threeStepRun, threeWindows } from './massCurves';

/** Defaults: spans of 10 K, 5 K smoothing, 0.005 %/K and 2 % of the largest rate, a change of 0.2 %. */
function detected(curve: Curve, initial: number, rate: number): DetectedStep[] {
  return detectSteps(curve, estimateNoise(curve), {
    span: 10 / rate,
    levelSlope: 5e-5 * initial * rate,
    relativeRate: 0.02,
    smooth: 5 / rate,
    least: 2e-3 * initial,
  });
}

describe('Steps proposed for a draft', () => {
  it('are exactly three on the exact curve of three, each within 0.1 % of its loss, noise or none', function () {
    const run = threeStepRun(needReference(this));
    for (const level of [0, 5e-5, 5e-4]) {
      const curve = noisy(run.curve, pinkNoise(run.curve.x.length, level * run.initial, seeded(4)));
      const found = detected(curve, run.initial, run.rate);
      assert.equal(found.length, 3, `noise ${level}`);
      found.forEach((step, i) => {
        const [from, to] = threeWindows[i];
        assert.ok(run.temperatureAt(step.at) > from && run.temperatureAt(step.at) < to);
        assert.ok(!step.open);
        if (level < 1e-4) near(step.change, run.steps[i].truth.change!, 1e-3 * run.initial);
      });
    }
  });

  for (const kelvinPerMinute of [2, 5, 10, 20]) {
    it(`are one on the exact first-order curve at ${kelvinPerMinute} K/min`, function () {
      const run = firstOrderRun(needReference(this), kelvinPerMinute);
      const found = detected(run.curve, run.initial, run.rate);
      assert.equal(found.length, 1);
      near(found[0].change, 7, 0.01);
    });
  }

  const rate = 10 / 60;
  const shapes: [string, number, number][] = [
    ['one reading a kelvin', 1000, 6],
    ['two readings a second', 12000, 0.5],
  ];
  for (const [shape, n, interval] of shapes) {
    for (const [kind, draw] of [
      ['white', whiteNoise],
      ['1/f', pinkNoise],
    ] as const) {
      for (const drift of [false, true]) {
        it(`are at most two in all on 50 runs of ${kind} noise${drift ? ' and buoyancy' : ''}, ${shape}`, () => {
          let count = 0;
          for (let seed = 0; seed < 50; seed++) {
            const sigma = seed % 2 === 0 ? 1e-3 : 1e-2;
            const noise = draw(n, sigma, seeded(500 + seed));
            // Lift lost by 0.1 cm³ in nitrogen from 25 °C: 0.1145 mg (1 - 298 K/T); density from reference values.
            const y = noise.map((v, i) => {
              const kelvin = 298 + rate * interval * i;
              return 10 + v + (drift ? 0.1145 * (1 - 298 / kelvin) : 0);
            });
            count += detected(
              checkedCurve(
                Float64Array.from(y, (_, i) => i * interval),
                y,
              )!,
              10,
              rate,
            ).length;
          }
          assert.ok(count <= 2, `${count}`);
        });
      }
    }
  }

  it('are one where two reactions leave no level between them, and two where they do', () => {
    // Heights 5 and 5 mg, widths 12 K; the middles 70 K apart, then 260 K apart.
    const run = (apart: number): Curve => {
      const x = Float64Array.from({ length: 1000 }, (_, i) => 6 * i);
      const step = (kelvin: number, middle: number): number => 5 / (1 + Math.exp((middle - kelvin) / 12));
      return checkedCurve(
        x,
        x.map((t) => 20 - step(t * rate, 400) - step(t * rate, 400 + apart)),
      )!;
    };
    const one = detected(run(70), 20, rate);
    assert.equal(one.length, 1);
    near(one[0].change, 10, 0.02);
    const two = detected(run(260), 20, rate);
    assert.equal(two.length, 2);
    for (const step of two) near(step.change, 5, 0.02);
    assert.ok(two[0].window.to <= two[1].window.from);
  });

  it('may end with the data where a large loss is cut off, and say so', () => {
    const x = Float64Array.from({ length: 600 }, (_, i) => 6 * i);
    const curve = checkedCurve(
      x,
      x.map((t) => 20 - 8 / (1 + Math.exp((580 - t * rate) / 25))),
    )!;
    const found = detected(curve, 20, rate);
    assert.equal(found.length, 1);
    assert.ok(found[0].open);
  });

  it('are gains as well as losses', () => {
    const x = Float64Array.from({ length: 1000 }, (_, i) => 6 * i);
    const found = detected(
      checkedCurve(
        x,
        x.map((t) => 20 + 2 / (1 + Math.exp((500 - t * rate) / 10))),
      )!,
      20,
      rate,
    );
    assert.equal(found.length, 1);
    near(found[0].change, -2, 0.01);
  });
});
