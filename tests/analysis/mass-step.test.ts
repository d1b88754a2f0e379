import assert from 'node:assert/strict';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { massStep, type MassStep, type MassStepOptions } from '../../server/src/analysis/massStep';
import { seeded, whiteNoise } from '../support/random';
import { near, noisy } from './massCurves';

const exact: MassStepOptions = { by: 'levels', spanFrom: 4, spanTo: 4, smooth: 5, noise: null };

/** Level at 10 up to 20 s, straight down to 4 at 40 s, level to 60 s, one reading a second. */
function trapezoid(): Curve {
  const x = Float64Array.from({ length: 61 }, (_, i) => i);
  return checkedCurve(
    x,
    x.map((t) => 10 - 0.3 * Math.max(0, Math.min(20, t - 20))),
  )!;
}

/** Logistic steps: height, middle, width each. */
function logistic(n: number, interval: number, steps: readonly (readonly [number, number, number])[]): Curve {
  const x = Float64Array.from({ length: n }, (_, i) => i * interval);
  return checkedCurve(
    x,
    x.map((t) => steps.reduce((y, [height, middle, width]) => y - height / (1 + Math.exp((middle - t) / width)), 20)),
  )!;
}

function evaluated(curve: Curve, from: number, to: number, options = exact): MassStep {
  const step = massStep(curve, { from, to }, options);
  assert.ok(step !== null);
  return step;
}

describe('A mass step on a few readings', () => {
  it('has the levels, the corners and the slope of a trapezoid exactly', () => {
    const step = evaluated(trapezoid(), 5, 55);
    assert.equal(step.massStart.value, 10);
    assert.equal(step.massEnd.value, 4);
    assert.equal(step.change.value, 6);
    near(step.start?.value, 20, 1e-9);
    near(step.end?.value, 40, 1e-9);
    near(step.midpoint?.value, 30, 1e-9);
    near(step.rate?.value, 0.3, 1e-12);
  });

  it('that gains has a negative change and a negative rate, at the same times', () => {
    const { x, y } = trapezoid();
    const step = evaluated(
      checkedCurve(
        x,
        y.map((v) => -v),
      )!,
      5,
      55,
    );
    assert.equal(step.change.value, -6);
    near(step.rate?.value, -0.3, 1e-12);
    near(step.start?.value, 20, 1e-9);
  });

  it('by tangents takes the lines beside it, not their means: a drift under the step costs nothing', () => {
    const { x, y } = trapezoid();
    const drifting = checkedCurve(
      x,
      y.map((v, i) => v - 0.01 * i),
    )!;
    const step = evaluated(drifting, 8, 52, { ...exact, by: 'tangents', spanFrom: 10, spanTo: 10 });
    near(step.change.value, 6, 1e-9);
    near(step.midpoint?.value, 30, 1e-9);
    near(step.start?.value, 20, 1e-9);
    near(step.end?.value, 40, 1e-9);
    assert.ok(Math.abs(evaluated(drifting, 8, 52).change.value - 6) > 0.4);
  });

  it('reads the levels about the window ends, clipped to the data', () => {
    const curve = logistic(101, 1, [[1, 50, 5]]);
    const { y } = curve;
    const step = evaluated(curve, 1, 99, { ...exact, spanFrom: 6, spanTo: 6 });
    near(step.massStart.value, (y[0] + y[1] + y[2] + y[3] + y[4]) / 5, 1e-12);
    near(step.massEnd.value, (y[96] + y[97] + y[98] + y[99] + y[100]) / 5, 1e-12);
  });

  it('of fewer than two readings is none', () => {
    assert.equal(massStep(trapezoid(), { from: 5.2, to: 5.8 }, exact), null);
  });

  it('without a slope in its direction has a change and no temperatures', () => {
    const flat = checkedCurve(Float64Array.from([0, 1, 2, 3, 4, 5]), new Float64Array(6).fill(2))!;
    const step = evaluated(flat, 0, 5);
    assert.equal(step.change.value, 0);
    assert.equal(step.inflection, null);
    assert.equal(step.rate, null);
  });

  it('shows both levels and the tangent between its corners', () => {
    const { shapes } = evaluated(trapezoid(), 5, 55);
    near(shapes.tangent[0][0], 20, 1e-9);
    near(shapes.tangent[1][1], 4, 1e-9);
    assert.deepEqual(
      shapes.levelFrom.map(([, y]) => y),
      [10, 10],
    );
    assert.deepEqual(
      shapes.levelTo.map(([, y]) => y),
      [4, 4],
    );
  });
});

describe('The derivative of a step', () => {
  it('has one maximum for one reaction and two for two, with the lowest rate between', () => {
    assert.equal(evaluated(logistic(400, 1, [[5, 200, 10]]), 50, 350).maxima.count, 1);
    const two = evaluated(
      logistic(400, 1, [
        [5, 150, 10],
        [5, 230, 10],
      ]),
      20,
      380,
    );
    assert.equal(two.maxima.count, 2);
    near(two.maxima.least?.time, 190, 1.1);
    near(two.maxima.least?.rate, 2 * 0.5 * (1 / (Math.exp(4) + Math.exp(-4) + 2)), 1e-4);
  });

  it('has no maximum too many when it is noisy', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const curve = noisy(logistic(2000, 0.5, [[5, 500, 30]]), whiteNoise(2000, 0.01, seeded(seed)));
      const step = evaluated(curve, 200, 800, {
        ...exact,
        spanFrom: 60,
        spanTo: 60,
        smooth: 30,
        noise: estimateNoise(curve),
      });
      assert.equal(step.maxima.count, 1, `seed ${seed}`);
    }
  });

  it('is steepest where a search of every reading finds it', () => {
    // The logistic is steepest at its middle; a skewed step where a dense scan of the closed form says.
    for (const [n, interval] of [
      [400, 1],
      [40000, 0.01],
    ]) {
      const curve = logistic(n, interval, [
        [4, 180.3, 12],
        [2, 205.1, 9],
      ]);
      const rate = (t: number): number =>
        [
          [4, 180.3, 12],
          [2, 205.1, 9],
        ].reduce((sum, [h, m, w]) => {
          const e = Math.exp((m - t) / w);
          return sum + (h / w) * (e / (1 + e) ** 2);
        }, 0);
      let best = 100;
      for (let t = 100; t < 300; t += 0.001) if (rate(t) > rate(best)) best = t;
      const step = evaluated(curve, 60, 340);
      near(step.inflection?.value, best, 0.03);
      near(step.rate?.value, rate(best), 1e-4 * rate(best));
    }
  });

  it('of the least width is taken where none is asked for', () => {
    near(evaluated(trapezoid(), 5, 55, { ...exact, smooth: null }).rate?.value, 0.3, 1e-12);
  });
});

describe('The departure of a step', () => {
  const curve = logistic(4000, 0.5, [[5, 1000, 40]]);

  it('is where the curve leaves its first level by three sigma, within its uncertainty', () => {
    let inside = 0;
    for (let seed = 1; seed <= 50; seed++) {
      const sigma = 0.004;
      const run = noisy(curve, whiteNoise(4000, sigma, seeded(seed)));
      const noise = estimateNoise(run);
      const step = evaluated(run, 300, 1700, {
        ...exact,
        spanFrom: 60,
        spanTo: 60,
        smooth: 30,
        departureFor: 18,
        noise,
      });
      // 5/(1 + exp((1000 - t)/40)) = 3 sigma.
      const truth = 1000 - 40 * Math.log(5 / (3 * noise.sigma) - 1);
      assert.ok(step.departure !== null);
      if (Math.abs(step.departure.value - truth) <= 2 * step.departure.noise) inside++;
    }
    assert.ok(inside >= 45, `${inside} of 50`);
  });

  it('is none where nothing leaves', () => {
    const run = noisy(curve, whiteNoise(4000, 0.004, seeded(1)));
    const options = { ...exact, spanFrom: 60, spanTo: 60, smooth: 30, departureFor: 18, noise: estimateNoise(run) };
    assert.equal(evaluated(run, 100, 500, options).departure, null);
  });
});

describe('The ends of a step', () => {
  it('are level at rest and not in the middle of a reaction, noise or none', () => {
    const clean = logistic(4000, 0.5, [[5, 1000, 40]]);
    for (const curve of [clean, noisy(clean, whiteNoise(4000, 0.003, seeded(2)))]) {
      const noise = curve === clean ? null : estimateNoise(curve);
      const options = { ...exact, spanFrom: 60, spanTo: 60, smooth: 30, levelSlope: 1e-4, noise };
      const good = evaluated(curve, 300, 1700, options);
      assert.ok(good.edges.from.level && good.edges.to.level);
      const bad = evaluated(curve, 300, 1060, options);
      assert.ok(bad.edges.from.level && !bad.edges.to.level);
      assert.ok(bad.edges.to.slope.value < -0.01);
    }
  });
});

describe('A step does not depend on', () => {
  const curve = noisy(logistic(3000, 0.5, [[5, 700, 25]]), whiteNoise(3000, 0.005, seeded(77)));
  const options = { ...exact, spanFrom: 60, spanTo: 60, smooth: 30, departureFor: 18, noise: estimateNoise(curve) };
  const here = evaluated(curve, 400, 1100, options);
  const times = ['start', 'midpoint', 'end', 'inflection', 'departure'] as const;

  it('when time starts: 1e9 s later every time is 1e9 s later, every mass the same', () => {
    const later = checkedCurve(
      curve.x.map((t) => t + 1e9),
      curve.y,
    )!;
    const there = evaluated(later, 400 + 1e9, 1100 + 1e9, { ...options, noise: estimateNoise(later) });
    near(there.change.value, here.change.value, 1e-12);
    for (const q of times) near((there[q]?.value ?? 0) - 1e9, here[q]?.value ?? 0, 1e-5, q);
    near(there.rate?.value, here.rate?.value ?? 0, 1e-9);
    near(there.start?.noise, here.start?.noise ?? 0, 1e-5);
  });

  it('the unit of mass: in micrograms everything is a thousand times as large, times stay', () => {
    const scaled = checkedCurve(
      curve.x,
      curve.y.map((v) => v * 1000),
    )!;
    const there = evaluated(scaled, 400, 1100, { ...options, noise: estimateNoise(scaled) });
    near(there.change.value, 1000 * here.change.value, 1e-8);
    near(there.change.noise, 1000 * here.change.noise, 1e-8);
    for (const q of times) near(there[q]?.value, here[q]?.value ?? 0, 1e-6, q);
  });

  it('the sampling: every second reading gives it within the uncertainty of both', () => {
    const half = checkedCurve(
      curve.x.filter((_, i) => i % 2 === 0),
      curve.y.filter((_, i) => i % 2 === 0),
    )!;
    const there = evaluated(half, 400, 1100, { ...options, noise: estimateNoise(half) });
    for (const q of [...times, 'change', 'rate'] as const) {
      const [a, b] = [here[q], there[q]];
      assert.ok(a !== null && b !== null);
      near(b.value, a.value, 2.5 * Math.hypot(a.noise, b.noise), q);
    }
  });

  it('leaving the uncertainties out: the values are the same to the last digit', () => {
    const bare = evaluated(curve, 400, 1100, { ...options, propagate: false });
    for (const q of [...times, 'change', 'rate', 'massStart', 'massEnd'] as const) {
      assert.equal(bare[q]?.value, here[q]?.value, q);
      assert.equal(bare[q]?.noise, 0, q);
    }
  });
});
