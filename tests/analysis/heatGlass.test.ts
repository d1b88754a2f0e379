import { strict as assert } from 'node:assert';
import type { Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { glassTransition, type GlassOptions, type GlassTransition } from '../../server/src/analysis/glassTransition';
import { needReference, readAnswers } from '../support/reference';
import { curveOf, gauss, glassCelsius, glassCurve, glassScale, glassTime, noisy, sampled } from './heatCurves';

/** The defaults of the language in seconds at 20 K/min: span 15 K, smooth 5 K. */
const defaults: GlassOptions = { by: 'half height', spanFrom: 45, spanTo: 45, smooth: 15, noise: null };

function evaluate(curve: Curve, from: number, to: number, options: Partial<GlassOptions> = {}): GlassTransition {
  const glass = glassTransition(curve, { from, to }, { ...defaults, ...options });
  assert.ok(glass !== null);
  return glass;
}

const near = (value: number | undefined, expected: number, within: number, what: string) => {
  assert.ok(value !== undefined && Math.abs(value - expected) <= within, `${what}: ${value} instead of ${expected}`);
};

describe('a glass step on exact tiny arrays', () => {
  // From the line 0.1 t up a ramp of slope 0.5 between 20 and 30 s to a parallel line 4 higher.
  const ramp = sampled(0, 50, 1, (t) => 0.1 * t + 0.4 * Math.min(10, Math.max(0, t - 20)));
  const tiny = { spanFrom: 12, spanTo: 12, smooth: 4 };

  it('begins and ends where the ramp does, is halfway in its middle, and as high as it', () => {
    const glass = evaluate(ramp, 0, 50, tiny);
    near(glass.onset?.value, 20, 1e-9, 'onset');
    near(glass.end?.value, 30, 1e-9, 'end');
    near(glass.midpoint?.value, 25, 1e-9, 'half height');
    near(glass.step.value, 4, 1e-9, 'step');
    near(evaluate(ramp, 0, 50, { ...tiny, by: 'equal areas' }).midpoint?.value, 25, 1e-9, 'equal areas');
  });

  it('may go down', () => {
    const glass = evaluate(
      curveOf(
        ramp.x,
        ramp.y.map((v) => 3 - v),
      ),
      0,
      50,
      tiny,
    );
    near(glass.onset?.value, 20, 1e-9, 'onset');
    near(glass.step.value, -4, 1e-9, 'step');
  });

  it('needs three samples for each line', () => {
    const few = curveOf([0, 10, 20, 30, 40, 50], [0, 0, 0, 1, 1, 1]);
    assert.equal(glassTransition(few, { from: 0, to: 50 }, { ...defaults, ...tiny }), null);
    assert.notEqual(glassTransition(ramp, { from: 0, to: 50 }, { ...defaults, ...tiny }), null);
  });
});

describe('a glass transition of known truth (reference curves c, exact to 15 digits)', function () {
  const names = ['c_glass_parallel', 'c_glass_nonparallel'] as const;
  const curves = new Map<string, Curve>();
  let answers: Record<string, Record<string, number>>;
  before(function () {
    const folder = needReference(this);
    answers = readAnswers(folder) as typeof answers;
    for (const name of names) curves.set(name, glassCurve(folder, name));
  });
  const celsius = (time: { value: number } | null) => (time === null ? undefined : glassCelsius(time.value));

  for (const name of names) {
    it(`${name}: onset, three midpoints and end within 0.02 K, step within 0.001 J/(g·K), default settings, 60..140 °C`, () => {
      const curve = curves.get(name)!;
      const answer = answers[name];
      const noise = estimateNoise(curve);
      const read = (by: GlassOptions['by']) => evaluate(curve, 0, glassTime(140), { by, noise });
      const half = read('half height');
      near(celsius(half.onset), answer.T_extrapolated_onset_C, 0.02, 'onset');
      near(celsius(half.end), answer.T_extrapolated_end_C, 0.02, 'end');
      near(celsius(half.midpoint), answer.Tg_half_step_height_C, 0.02, 'half height');
      near(celsius(read('equal areas').midpoint), answer.Tg_equal_areas_C, 0.02, 'equal areas');
      near(celsius(read('inflection').midpoint), answer.Tg_inflection_C, 0.02, 'inflection');
      near(half.step.value / glassScale, answer.delta_cp_at_Tg_J_per_gK, 0.001, 'step');
      near(read('inflection').step.value / glassScale, answer.delta_cp_at_inflection_J_per_gK, 0.001, 'step there');
    });

    it(`${name}: the same with a window 5 K tighter on both sides`, () => {
      const curve = curves.get(name)!;
      const answer = answers[name];
      const half = evaluate(curve, glassTime(65), glassTime(135));
      near(celsius(half.onset), answer.T_extrapolated_onset_C, 0.02, 'onset');
      near(celsius(half.midpoint), answer.Tg_half_step_height_C, 0.02, 'half height');
      near(half.step.value / glassScale, answer.delta_cp_at_Tg_J_per_gK, 0.001, 'step');
    });
  }

  it('the three midpoints differ where the lines are not parallel, so that none can stand for another', () => {
    const curve = curves.get('c_glass_nonparallel')!;
    const at = (by: GlassOptions['by']) => celsius(evaluate(curve, 0, glassTime(140), { by }).midpoint)!;
    assert.ok(at('half height') - at('equal areas') > 0.03);
    assert.ok(at('equal areas') - at('inflection') > 0.03);
  });

  it('does not depend on when the clock was started, nor on the unit or the zero of the signal', () => {
    const curve = curves.get('c_glass_nonparallel')!;
    const plain = evaluate(curve, 0, 240, { by: 'equal areas' });
    const late = evaluate(
      curveOf(
        curve.x.map((t) => t + 1e9),
        curve.y.map((v) => 5e3 - 100 * v),
      ),
      1e9,
      1e9 + 240,
      { by: 'equal areas' },
    );
    near((late.midpoint?.value ?? 0) - 1e9, plain.midpoint?.value ?? NaN, 1e-4, 'midpoint');
    near((late.onset?.value ?? 0) - 1e9, plain.onset?.value ?? NaN, 1e-3, 'onset');
    near(late.step.value / -100, plain.step.value, 1e-6, 'step');
  });

  it('gives the same numbers with and without uncertainties', () => {
    const curve = noisy(curves.get('c_glass_parallel')!, 'white', 0.01, 3);
    const noise = estimateNoise(curve);
    const withU = evaluate(curve, 0, 240, { noise });
    const without = evaluate(curve, 0, 240, { noise, propagate: false });
    for (const name of ['onset', 'midpoint', 'inflection', 'end', 'step'] as const) {
      assert.equal(withU[name]?.value, without[name]?.value, name);
      assert.ok((withU[name]?.noise ?? 0) > 0, `${name} has no uncertainty`);
      assert.equal(without[name]?.noise, 0, name);
    }
    assert.equal(without.checks, null);
  });

  it('is read alike from ten times as many readings', () => {
    const step = (t: number) => 7 + 0.006 * t + 0.75 * (1 + Math.tanh((t - 120) / 12));
    const [dense, sparse] = [0.03, 0.3].map((interval) => evaluate(sampled(0, 240, interval, step), 0, 240));
    for (const name of ['onset', 'midpoint', 'end'] as const) {
      near(dense[name]?.value, sparse[name]?.value ?? NaN, 0.01, name);
    }
    near(dense.step.value, 1.5, 1e-4, 'step');
  });
});

describe('what findings about a glass transition rest on', () => {
  const step = (t: number) => 7 + 0.006 * t + 0.75 * (1 + Math.tanh((t - 120) / 12));
  const checked = (shape: (t: number) => number, options: Partial<GlassOptions> = {}) => {
    const curve = noisy(sampled(0, 240, 0.3, shape), 'white', 0.005, 9);
    const { checks } = evaluate(curve, 0, 240, { noise: estimateNoise(curve), ...options });
    assert.ok(checks !== null);
    return checks;
  };

  it('a plain step has no overshoot; a relaxation peak is one, as large as it is', () => {
    assert.ok(checked(step).overshoot.ofStep < 0.02);
    // 0.75 beyond the line at 150 s, where the step is over to within a hundredth: half of the step of 1.5.
    const { overshoot } = checked((t) => step(t) + 0.75 * gauss(t, 150, 6) * 6 * Math.sqrt(2 * Math.PI));
    near(overshoot.ofStep, 0.5, 0.06, 'overshoot over step');
    near(overshoot.time, 150, 4, 'its time');
    assert.ok(overshoot.sigmas > 10);
  });

  it('lines are straight beside a plain step; one on a transient is not', () => {
    const sound = checked(step);
    assert.ok(sound.from.straight && sound.to.straight);
    near(sound.from.length, 45, 1, 'length of a line');
    const bent = checked((t) => step(t) + Math.exp(-t / 20));
    assert.ok(!bent.from.straight, JSON.stringify(bent.from));
    assert.ok(bent.to.straight);
  });

  it('lines are at most a third of the window', () => {
    const curve = sampled(0, 240, 0.3, step);
    const glass = evaluate(curve, 90, 150, { noise: estimateNoise(curve) });
    near(glass.checks?.from.length, 20, 0.5, 'length of a line');
  });

  it('a default smoothing takes little from the slope; one written wider than the step does', () => {
    assert.ok(checked(step).smoothingLoss < 0.01);
    assert.ok(checked(step, { smooth: 60, narrow: false }).smoothingLoss > 0.1);
  });
});
