import { strict as assert } from 'node:assert';
import type { Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { heatPeak, type HeatPeak, type HeatPeakOptions } from '../../server/src/analysis/heatPeak';
import { needReference, readAnswers } from '../support/reference';
import { curveOf, gauss, noisy, peakCelsius, peakCurve, peakTime, sampled } from './heatCurves';

/** The defaults of the language in seconds at 10 K/min: span 10 K, smooth 5 K. */
const defaults: HeatPeakOptions = { baseline: 'linear', spanFrom: 60, spanTo: 60, smooth: 30, noise: null };

function evaluate(curve: Curve, from: number, to: number, options: Partial<HeatPeakOptions> = {}): HeatPeak {
  const peak = heatPeak(curve, { from, to }, { ...defaults, ...options });
  assert.ok(peak !== null);
  return peak;
}

const near = (value: number | undefined, expected: number, within: number, what: string) => {
  assert.ok(value !== undefined && Math.abs(value - expected) <= within, `${what}: ${value} instead of ${expected}`);
};

describe('a heat-flow peak on exact tiny arrays', () => {
  // A triangle of height 5 over 8..12 s has the area 10; on a tilted line it keeps it.
  const triangle = (tilt: number, sign = 1) =>
    sampled(0, 20, 0.5, (t) => 2 + tilt * t + sign * Math.max(0, 5 - 2.5 * Math.abs(t - 10)));
  const tiny = { spanFrom: 5, spanTo: 5, smooth: null };

  it('has the area of the triangle it is, on a level and on a tilted line', () => {
    for (const tilt of [0, 0.3, -1]) {
      const peak = evaluate(triangle(tilt), 2, 18, tiny);
      near(peak.area.value, 10, 1e-12, `area at tilt ${tilt}`);
      assert.equal(peak.direction, 1);
    }
  });

  it('is negative and exothermic when it points down', () => {
    const peak = evaluate(triangle(0.3, -1), 2, 18, tiny);
    near(peak.area.value, -10, 1e-12, 'area');
    assert.equal(peak.direction, -1);
    assert.ok(peak.height.value < 0);
  });

  it('is integrated between limits that are no samples', () => {
    const peak = evaluate(triangle(0.3), 2.13, 17.71, tiny);
    near(peak.area.value, 10, 1e-12, 'area');
  });

  it('is the same by every baseline where the curve lies on one straight line', () => {
    for (const baseline of ['linear', 'tangent left', 'tangent right', 'sigmoidal'] as const) {
      near(evaluate(triangle(0.3), 2, 18, { ...tiny, baseline }).area.value, 10, 1e-9, baseline);
    }
  });

  it('is no peak with fewer than five samples', () => {
    const curve = curveOf([0, 1, 2, 3, 4, 5, 6], [0, 0, 0, 1, 0, 0, 0]);
    assert.equal(heatPeak(curve, { from: 1.5, to: 5.5 }, { ...defaults, ...tiny }), null);
    assert.notEqual(heatPeak(curve, { from: 0.5, to: 5.5 }, { ...defaults, ...tiny }), null);
  });
});

describe('a sigmoidal baseline', () => {
  // A Gaussian of area 300 whose baseline steps by `step` with the fraction passed, between two tilted lines.
  const stepping = (step: number) => {
    let passed = 0;
    return sampled(0, 600, 0.25, (t) => {
      const shape = gauss(t, 300, 12);
      passed += shape * 0.25;
      return 1 + 0.002 * t + step * (passed - 0.125 * shape) + 300 * shape;
    });
  };

  it('returns the area above a baseline that follows the conversion, up or down', () => {
    for (const step of [-2, 0, 1, 4]) {
      const peak = evaluate(stepping(step), 200, 400, { baseline: 'sigmoidal' });
      assert.ok(peak.converged);
      near(peak.area.value, 300, 300 * 1e-5, `area at a step of ${step}`);
    }
  });

  it('keeps its fraction within 0..1 on a plain peak, and says when it leaves it', () => {
    const plain = evaluate(stepping(1), 200, 400, { baseline: 'sigmoidal' });
    assert.ok(plain.fraction.lowest > -1e-3 && plain.fraction.highest < 1 + 1e-3);
    const both = sampled(0, 600, 0.5, (t) => 300 * gauss(t, 340, 12) - 150 * gauss(t, 250, 12));
    const mixed = evaluate(both, 150, 450, { baseline: 'sigmoidal' });
    assert.ok(mixed.fraction.lowest < -0.5, `lowest fraction ${mixed.fraction.lowest}`);
  });

  it('says that it did not settle where the step is many times the peak', () => {
    const curve = sampled(0, 600, 0.5, (t) => 5 * Math.tanh((t - 300) / 20) + 10 * gauss(t, 300, 12));
    const peak = evaluate(curve, 150, 450, { baseline: 'sigmoidal' });
    const sound = peak.converged && peak.fraction.lowest > -0.1 && peak.fraction.highest < 1.1;
    assert.ok(!sound, JSON.stringify({ converged: peak.converged, ...peak.fraction }));
  });
});

describe('a peak of known truth (reference curves b and b2, exact to 15 digits)', function () {
  let plain: Curve;
  let stepped: Curve;
  let b: Record<string, number>;
  let b2: Record<string, number>;
  before(function () {
    const folder = needReference(this);
    plain = peakCurve(folder, 'b_emg_peak');
    stepped = peakCurve(folder, 'b2_emg_peak_step_baseline');
    const answers = readAnswers(folder) as Record<string, Record<string, number>>;
    b = answers.b_emg_peak;
    b2 = answers.b2_emg_step_baseline;
  });
  const celsius = (time: { value: number } | null) => (time === null ? undefined : peakCelsius(time.value));

  it('gives the area within 3e-4 and onset, peak and end within 0.02 K at default settings, 150..180 °C', () => {
    const peak = evaluate(plain, peakTime(150), peakTime(180), { noise: estimateNoise(plain) });
    near(peak.area.value, b.area_mJ, 3e-4 * b.area_mJ, 'area');
    near(celsius(peak.onset), b.extrapolated_onset_T_C, 0.02, 'onset');
    near(celsius(peak.peak), b.peak_T_C, 0.02, 'peak');
    near(celsius(peak.end), b.extrapolated_end_T_C, 0.02, 'end');
  });

  it('gives height, half heights and half width of the same peak', () => {
    const peak = evaluate(plain, peakTime(150), peakTime(180));
    near(peak.height.value, b.peak_height_above_baseline_mW, 0.002, 'height');
    near(peak.halfLeft?.value, b.half_height_left_s, 0.01, 'half height before');
    near(peak.halfRight?.value, b.half_height_right_s, 0.01, 'half height after');
    near(peak.halfWidth?.value, b.FWHM_s, 0.01, 'half width');
  });

  it('recovers the area above a stepping baseline within 3e-4, sigmoidal', () => {
    const peak = evaluate(stepped, peakTime(150), peakTime(180), { baseline: 'sigmoidal' });
    near(peak.area.value, b.area_mJ, 3e-4 * b.area_mJ, 'area');
  });

  it('errs with a straight line under that peak by as much as a straight line must', () => {
    const peak = evaluate(stepped, peakTime(150), peakTime(180));
    near(peak.area.value, b2.area_with_straight_line_mJ, 1e-4 * b2.area_with_straight_line_mJ, 'straight-line area');
  });

  it('stands with windows 5 K tighter', () => {
    const area = (curve: Curve, baseline: 'linear' | 'sigmoidal', from: number, to: number) =>
      evaluate(curve, peakTime(from), peakTime(to), { baseline }).area.value;
    for (const [from, to] of [
      [155, 180],
      [150, 175],
      [155, 175],
    ]) {
      near(area(plain, 'linear', from, to), b.area_mJ, 3e-4 * b.area_mJ, `plain, ${from}..${to}`);
      near(area(stepped, 'sigmoidal', from, to), b.area_mJ, 3e-4 * b.area_mJ, `stepped, ${from}..${to}`);
    }
  });

  it('does not depend on when the clock was started, nor on the unit or the zero of the signal', () => {
    const whole = evaluate(plain, 300, 480);
    const late = evaluate(
      curveOf(
        plain.x.map((t) => t + 1e9),
        plain.y,
      ),
      1e9 + 300,
      1e9 + 480,
    );
    near(late.area.value, whole.area.value, 1e-9 * whole.area.value, 'area, late');
    near((late.onset?.value ?? 0) - 1e9, whole.onset?.value ?? NaN, 1e-5, 'onset, late');
    const other = evaluate(
      curveOf(
        plain.x,
        plain.y.map((v) => 1000 * v - 7e4),
      ),
      300,
      480,
    );
    near(other.area.value / 1000, whole.area.value, 1e-9 * whole.area.value, 'area in another unit');
    near(other.end?.value, whole.end?.value ?? NaN, 1e-6, 'end in another unit');
  });

  it('is the same upside down, and nearly the same on half of the samples', () => {
    const whole = evaluate(plain, 300, 480);
    const down = evaluate(
      curveOf(
        plain.x,
        plain.y.map((v) => -v),
      ),
      300,
      480,
    );
    assert.equal(down.direction, -1);
    near(-down.area.value, whole.area.value, 1e-12 * whole.area.value, 'area upside down');
    near(down.onset?.value, whole.onset?.value ?? NaN, 1e-9, 'onset upside down');
    const keep = (_: number, i: number) => i % 2 === 0;
    const half = evaluate(curveOf(plain.x.filter(keep), plain.y.filter(keep)), 300, 480);
    near(half.area.value, whole.area.value, 1e-4 * whole.area.value, 'area of half of the samples');
    near(half.onset?.value, whole.onset?.value ?? NaN, 0.03, 'onset of half of the samples');
  });

  it('gives the same numbers with and without uncertainties', () => {
    const curve = noisy(plain, 'white', 0.05, 11);
    const noise = estimateNoise(curve);
    const withU = evaluate(curve, 300, 480, { noise });
    const without = evaluate(curve, 300, 480, { noise, propagate: false });
    for (const name of ['area', 'height', 'peak', 'onset', 'end', 'departure', 'return', 'halfWidth'] as const) {
      assert.equal(withU[name]?.value, without[name]?.value, name);
      assert.ok((withU[name]?.noise ?? 0) > 0, `${name} has no uncertainty`);
      assert.equal(without[name]?.noise, 0, name);
    }
    assert.equal(without.checks, null);
  });

  it('is read alike from ten times as many readings', () => {
    const dense = sampled(0, 600, 0.025, (t) => 1.5 + 0.0012 * t + 286.624 * gauss(t, 350, 20));
    const sparse = sampled(0, 600, 0.25, (t) => 1.5 + 0.0012 * t + 286.624 * gauss(t, 350, 20));
    const [many, few] = [dense, sparse].map((curve) => evaluate(curve, 200, 500));
    near(many.area.value, 286.624, 286.624 * 1e-6, 'area');
    for (const name of ['onset', 'peak', 'end', 'halfWidth'] as const) {
      near(many[name]?.value, few[name]?.value ?? NaN, 0.003, name);
    }
    // For a Gaussian the tangents at one sigma meet the base at two.
    near(many.onset?.value, 310, 0.05, 'onset of a Gaussian');
    near(many.end?.value, 390, 0.05, 'end of a Gaussian');
  });
});

describe('what findings about a peak rest on', () => {
  const line = (t: number) => 1 + 0.002 * t;
  const single = sampled(0, 900, 0.5, (t) => line(t) + 300 * gauss(t, 450, 15));
  const stepping = sampled(
    0,
    900,
    0.5,
    (t) => line(t) + 0.5 * (1 + Math.tanh((t - 450) / 15)) + 300 * gauss(t, 450, 15),
  );
  const checked = (curve: Curve, from: number, to: number, options: Partial<HeatPeakOptions> = {}) => {
    const read = noisy(curve, 'white', 0.01, 5);
    const { checks } = evaluate(read, from, to, { noise: estimateNoise(read), ...options });
    assert.ok(checks !== null);
    return checks;
  };

  it('no crossing on a sound peak; a crossing where an exothermic part lies in the window', () => {
    assert.ok(!(checked(single, 300, 600).opposite?.crosses ?? false));
    const both = sampled(0, 900, 0.5, (t) => line(t) + 300 * gauss(t, 450, 15) - 60 * gauss(t, 350, 15));
    const { opposite } = checked(both, 250, 600);
    assert.ok(opposite?.crosses === true);
    near(opposite.ofArea, 0.2, 0.01, 'part of the other sign over the main one');
    near(opposite.depth, 60 / (15 * Math.sqrt(2 * Math.PI)), 0.06, 'depth');
    assert.ok(opposite.from > 290 && opposite.to < 410);
  });

  it('limits on level ground are level; a limit on the flank is not', () => {
    const sound = checked(single, 300, 600);
    assert.ok(sound.from?.level === true && sound.to?.level === true);
    const cut = checked(single, 415, 600);
    assert.ok(cut.from?.level === false);
    assert.ok(cut.to?.level === true);
  });

  it('no neighbour is seen where the data begin at the limit', () => {
    assert.equal(checked(single, 0, 600).from, null);
  });

  it('the areas of all baselines agree on a straight line, within noise, and differ on a stepping one', () => {
    const agree = checked(single, 300, 600).areas;
    assert.equal(agree.length, 4);
    for (const { kind, difference } of agree) {
      assert.ok(Math.abs(difference.value) <= 4 * difference.noise + 1e-9, `${kind}: ${JSON.stringify(difference)}`);
    }
    // Between 300 and 700 s a straight line under a step of 1 at 450 s misses 250 - 400 / 2 = 50.
    const differ = checked(stepping, 300, 700).areas.find((a) => a.kind === 'sigmoidal');
    near(differ?.difference.value, -50, 5, 'sigmoidal less straight');
    assert.ok(Math.abs(differ?.difference.value ?? 0) > 5 * (differ?.difference.noise ?? Infinity));
  });

  it('the step of heat capacity under a peak is found to be there, or not', () => {
    const none = checked(single, 300, 600).step;
    assert.ok(Math.abs(none.value) <= 3 * none.noise, JSON.stringify(none));
    const step = checked(stepping, 300, 600).step;
    near(step.value, 1, 3 * step.noise + 0.01, 'step');
    assert.ok(step.value > 5 * step.noise);
  });

  it('a default smoothing takes nothing from the flank; one written wider than the peak does', () => {
    const sound = checked(single, 300, 600);
    assert.ok(sound.smooth < 18 && sound.smoothingLoss < 0.001, `${sound.smooth}, ${sound.smoothingLoss}`);
    const wide = checked(single, 300, 600, { smooth: 90, narrow: false });
    assert.equal(wide.smooth, 90);
    assert.ok(wide.smoothingLoss > 0.05, `${wide.smoothingLoss}`);
  });

  it('counts readings across the half height, and measures leading edge and height over sigma', () => {
    const checks = checked(single, 300, 600);
    near(checks.readingsAcrossHalf, (15 * 2.3548) / 0.5, 2, 'readings');
    near(checks.leadingEdge, 15 * Math.sqrt(2 * Math.log(20)), 2, 'leading edge from a twentieth of the height');
    // Sigma by median residuals is drawn up a little by the peak itself, which fills a sixth of the segment.
    near(checks.signalToNoise, 300 / (15 * Math.sqrt(2 * Math.PI)) / 0.01, 200, 'height over sigma');
  });

  it('departure and return are where an exact peak passes a ten-thousandth of its height', () => {
    const peak = evaluate(
      sampled(0, 900, 0.5, (t) => 300 * gauss(t, 450, 15)),
      300,
      600,
    );
    const reach = 15 * Math.sqrt(2 * Math.log(1e4));
    near(peak.departure?.value, 450 - reach, 0.5, 'departure');
    near(peak.return?.value, 450 + reach, 0.5, 'return');
  });
});
