import { strict as assert } from 'node:assert';
import { BASELINE_KINDS, type BaselineKind } from '../../server/src/analysis/baseline';
import type { Curve } from '../../server/src/analysis/curve';
import { apply, sumOf, type Term } from '../../server/src/analysis/functional';
import { levelStretch, type StretchRule } from '../../server/src/analysis/levelStretch';
import { noiseOf, silent, type Noise } from '../../server/src/analysis/noise';
import { thinnedCurve, thinnedNoise } from '../../server/src/analysis/thinnedCurve';
import { timeBlocks } from '../../server/src/analysis/timeBlocks';
import { windowBaselines } from '../../server/src/analysis/windowBaselines';
import { windowIntegral } from '../../server/src/analysis/windowIntegral';
import { seeded } from '../support/random';
import { curveOf, gauss, noisy, sampled } from './heatCurves';

const white = (sigma: number): Noise => ({ ...silent, sigma, components: [{ variance: sigma ** 2, time: 0 }] });

const valueOf = (terms: readonly Term[], y: Float64Array): number =>
  sumOf(terms).reduce((sum, piece) => sum + apply(piece, y), 0);

describe('the integral over a window', () => {
  it('is exact on a parabola of few samples as the trapezoid rule has it, and with limits between samples', () => {
    const curve = curveOf([0, 1, 2, 3, 4], [0, 1, 4, 9, 16]);
    const over = (from: number, to: number) => {
      const grid = windowIntegral(curve, curve, { from, to });
      return grid.integral + grid.origin * (to - from);
    };
    assert.ok(Math.abs(over(0, 4) - 22) < 1e-12);
    // Between 1 and 3 the chords give 2.5 + 6.5; half of the chord from 3 to 4 begins at 9 and ends at 12.5.
    assert.ok(Math.abs(over(1, 3.5) - (2.5 + 6.5 + (9 + 12.5) / 4)) < 1e-12);
  });

  it('as a functional gives the same value, whatever the density', () => {
    const curve = sampled(0, 20, 0.7, (t) => Math.sin(t) + 3);
    const grid = windowIntegral(curve, curve, { from: 2.2, to: 17.3 });
    const plain = valueOf([{ times: 1, of: grid.functional() }], curve.y);
    assert.ok(Math.abs(plain - grid.integral - grid.origin * 15.1) < 1e-12);
    const twice = valueOf([{ times: 1, of: grid.functional(() => 2) }], curve.y);
    assert.ok(Math.abs(twice - 2 * plain) < 1e-12);
  });

  it('over averages keeps the area of the readings', () => {
    const curve = sampled(0, 400, 0.1, (t) => 5 + gauss(t, 200, 20));
    const thin = thinnedCurve(curve, 16);
    const grid = windowIntegral(curve, thin, { from: 50.03, to: 350.01 });
    assert.ok(grid.x.length < 200);
    const exact = windowIntegral(curve, curve, { from: 50.03, to: 350.01 });
    const whole = (g: typeof grid) => g.integral + g.origin * 299.98;
    assert.ok(Math.abs(whole(grid) - whole(exact)) < 1e-9);
  });
});

describe('averages of a curve', () => {
  it('are cut at the origin and never empty', () => {
    const blocks = timeBlocks(
      Float64Array.of(0, 1, 2, 10, 11),
      Float64Array.of(1, 3, 5, 7, 9),
      { first: 0, last: 5 },
      2,
      2,
    );
    assert.deepEqual([...blocks.x], [0.5, 2, 10.5]);
    assert.deepEqual([...blocks.y], [2, 5, 8]);
    assert.deepEqual([...blocks.counts], [2, 1, 2]);
  });

  it('have the noise that averages of drawn noise have', () => {
    // Exponentially correlated noise by its exact recursion; variance of means of 8 samples over 20,000 blocks.
    const random = seeded(5);
    const size = 8;
    for (const time of [0, 1, 5, 40]) {
      const keep = time > 0 ? Math.exp(-1 / time) : 0;
      let value = random.normal();
      let squares = 0;
      const blocks = 20_000;
      for (let k = 0; k < blocks; k++) {
        let sum = 0;
        for (let i = 0; i < size; i++) {
          sum += value;
          value = keep * value + Math.sqrt(1 - keep ** 2) * random.normal();
        }
        squares += (sum / size) ** 2;
      }
      const { components } = thinnedNoise({ ...silent, components: [{ variance: 1, time }] }, size, size);
      const ratio = components[0].variance / (squares / blocks);
      // The formula takes the samples as dense: 8 % off where the correlation time is one interval.
      assert.ok(Math.abs(ratio - 1) < 0.12, `time ${time}: ${ratio}`);
    }
  });
});

describe('the level stretch at a limit', () => {
  const rule: StretchRule = {
    limit: 300,
    inward: 1,
    inside: 60,
    outside: 60,
    span: 60,
    noise: silent,
    floor: 1e-6,
  };
  const straight = (t: number) => 1 + 0.01 * t;

  it('is the whole span inside where the curve is straight, and its line is the curve', () => {
    const stretch = levelStretch(sampled(0, 600, 1, straight), rule);
    assert.ok(stretch.level);
    assert.ok(
      Math.abs(stretch.inside - 59) <= 1 && stretch.outside <= 1,
      JSON.stringify([stretch.inside, stretch.outside]),
    );
    assert.ok(Math.abs(stretch.line.at(300) - straight(300)) < 1e-12);
  });

  it('ends before a peak begins, and makes up for it outside', () => {
    const stretch = levelStretch(
      sampled(0, 600, 1, (t) => straight(t) + 200 * gauss(t, 400, 15)),
      rule,
    );
    assert.ok(stretch.level);
    assert.ok(stretch.inside > 5 && stretch.inside < 400 - 4 * 15 - 300, `${stretch.inside} s inside`);
    assert.ok(stretch.inside + stretch.outside > 50, `${stretch.outside} s outside`);
    assert.ok(Math.abs(stretch.line.at(300) - straight(300)) < 1e-5);
  });

  it('is none on a flank: then the curve itself is read there', () => {
    const curve = sampled(0, 600, 1, (t) => straight(t) + 200 * gauss(t, 330, 15));
    const stretch = levelStretch(curve, rule);
    assert.ok(!stretch.level);
    assert.ok(Math.abs(stretch.line.at(300) - curve.y[300]) < 0.2);
  });

  it('is not shortened by noise: at least half of the span inside in 95 of 100 draws', () => {
    let long = 0;
    for (let draw = 0; draw < 100; draw++) {
      const stretch = levelStretch(noisy(sampled(0, 600, 1, straight), 'white', 0.05, draw), {
        ...rule,
        noise: white(0.05),
      });
      if (stretch.inside > 30) long++;
    }
    assert.ok(long >= 95, `${long}`);
  });
});

describe('the area under each baseline as a functional of the samples', () => {
  const shape = (t: number) => 1 + 0.003 * t + 1.5 * (1 + Math.tanh((t - 300) / 20)) + 300 * gauss(t, 300, 12);
  const curve = sampled(0, 600, 2, shape);
  const window = { from: 201, to: 407 };
  // A noise that is not there keeps the stretches where they are while single samples are moved.
  const options = { spanFrom: 60, spanTo: 60, noise: white(0.5) };
  const areaOf = (c: Curve, kind: BaselineKind) => windowBaselines(c, c, window, options).of(kind).area;

  for (const kind of BASELINE_KINDS) {
    it(`${kind}: is what moving single samples does to it`, () => {
      const functional = sumOf(windowBaselines(curve, curve, window, options).of(kind).areaTerms());
      const weightOf = (i: number) => {
        const piece = functional.find((p) => i >= p.first && i < p.first + p.weights.length);
        return piece === undefined ? 0 : piece.weights[i - piece.first];
      };
      const step = 1e-3;
      for (const i of [85, 95, 101, 110, 125, 140, 150, 155, 170, 190, 203, 210]) {
        const moved = (by: number) =>
          curveOf(
            curve.x,
            curve.y.map((v, k) => (k === i ? v + by : v)),
          );
        const slope = (areaOf(moved(step), kind) - areaOf(moved(-step), kind)) / (2 * step);
        // The formula for the sigmoidal one solves a differential equation by the trapezoid rule on the samples.
        assert.ok(
          Math.abs(slope - weightOf(i)) < 0.01 * Math.max(0.2, Math.abs(slope)),
          `sample ${i}: ${slope} by moving, ${weightOf(i)} by formula`,
        );
      }
    });
  }

  it('sigmoidal: the value of the baseline under the peak as well', () => {
    const at = 305;
    const valueAt = (c: Curve) => windowBaselines(c, c, window, options).of('sigmoidal').at(at);
    const terms = sumOf(windowBaselines(curve, curve, window, options).of('sigmoidal').termsAt(at));
    for (const i of [101, 125, 145, 151, 160, 190]) {
      const moved = (by: number) =>
        curveOf(
          curve.x,
          curve.y.map((v, k) => (k === i ? v + by : v)),
        );
      const slope = (valueAt(moved(1e-3)) - valueAt(moved(-1e-3))) / 2e-3;
      const piece = terms.find((p) => i >= p.first && i < p.first + p.weights.length);
      const weight = piece === undefined ? 0 : piece.weights[i - piece.first];
      assert.ok(Math.abs(slope - weight) < 2e-3, `sample ${i}: ${slope} by moving, ${weight} by formula`);
    }
  });

  it('white noise on independent samples propagates as the root of the sum of squares', () => {
    const baseline = windowBaselines(curve, curve, window, options).of('linear');
    const squares = sumOf(baseline.areaTerms()).reduce((sum, p) => sum + p.weights.reduce((a, w) => a + w * w, 0), 0);
    const u = noiseOf(white(0.02), curve.x, baseline.areaTerms());
    assert.ok(Math.abs(u - 0.02 * Math.sqrt(squares)) < 1e-12);
  });
});
