import { strict as assert } from 'node:assert';
import type { Curve } from '../../server/src/analysis/curve';
import { detectGlass } from '../../server/src/analysis/detectGlass';
import { detectPeaks } from '../../server/src/analysis/detectPeaks';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { startTransient } from '../../server/src/analysis/startTransient';
import { needReference } from '../support/reference';
import { gauss, glassCelsius, glassCurve, noisy, peakCelsius, peakCurve, sampled } from './heatCurves';
import { celsiusAt, COLD, preform, zeroLine, type Segment } from './heatScenario';

const at10 = { span: 60, smooth: 30 };
const at20 = { span: 30, smooth: 15 };

function found(curve: Curve, options = at10) {
  const noise = estimateNoise(curve);
  return { peaks: detectPeaks(curve, noise, options), glass: detectGlass(curve, noise, options) };
}

const near = (value: number, expected: number, within: number, what: string) => {
  assert.ok(Math.abs(value - expected) <= within, `${what}: ${value} instead of ${expected}`);
};

describe('what a draft proposes on exact curves (reference folder)', function () {
  let folder: string;
  before(function () {
    folder = needReference(this);
  });

  for (const name of ['b_emg_peak', 'b2_emg_peak_step_baseline'] as const) {
    it(`${name}: exactly one peak and no glass, without and with noise`, () => {
      const exact = peakCurve(folder, name);
      for (const curve of [exact, noisy(exact, 'white', 0.02, 1), noisy(exact, '1/f', 0.1, 2)]) {
        const { peaks, glass } = found(curve);
        assert.equal(glass.length, 0);
        assert.equal(peaks.length, 1);
        near(peakCelsius(peaks[0].at), 158.08, 0.1, 'peak');
        assert.equal(peaks[0].direction, 1);
        assert.equal(peaks[0].steps, name.startsWith('b2'), 'step of the baseline');
        const { from, to } = peaks[0].window;
        assert.ok(peakCelsius(from) > 140 && peakCelsius(from) < 154 && peakCelsius(to) > 166 && peakCelsius(to) < 185);
      }
    });
  }

  for (const name of ['c_glass_parallel', 'c_glass_nonparallel'] as const) {
    it(`${name}: exactly one glass step and no peak, without and with noise`, () => {
      const exact = glassCurve(folder, name);
      for (const curve of [exact, noisy(exact, 'white', 0.01, 1), noisy(exact, '1/f', 0.01, 2)]) {
        const { peaks, glass } = found(curve, at20);
        assert.equal(peaks.length, 0);
        assert.equal(glass.length, 1);
        near(glassCelsius(glass[0].at), 100, 0.5, 'midpoint');
        near(glass[0].step, 1.5, 0.1, 'step, mW');
      }
    });
  }
});

describe('what a draft proposes on noise alone', function () {
  this.timeout(120_000);

  it('at most two effects in 50 seeded runs with a bent zero line and a start transient, white and 1/f', () => {
    let effects = 0;
    for (let run = 0; run < 50; run++) {
      const exact = sampled(0, 2700, 1, (t) => zeroLine(25 + t / 6, t));
      const curve = noisy(exact, run % 2 === 0 ? 'white' : '1/f', run % 4 < 2 ? 0.003 : 0.02, 7000 + run);
      const { peaks, glass } = found(curve);
      effects += peaks.length + glass.length;
    }
    assert.ok(effects <= 2, `${effects} effects`);
  });

  it('nothing on a curve too short to hold an effect between straight stretches', () => {
    const { peaks, glass } = found(sampled(0, 120, 1, (t) => 300 * gauss(t, 60, 10)));
    assert.equal(peaks.length + glass.length, 0);
  });
});

describe('what a draft proposes on a heat-cool-heat run (invented polyester preform)', function () {
  this.timeout(60_000);
  const expected: Record<
    Segment,
    { glass: number; peaks: readonly (readonly [celsius: number, direction: 1 | -1])[] }
  > = {
    'first heating': {
      glass: 76.5,
      peaks: [
        [128, -1],
        [250.3, 1],
      ],
    },
    cooling: { glass: 74, peaks: [[195, -1]] },
    'second heating': { glass: 80.2, peaks: [[250.3, 1]] },
  };

  for (const segment of ['first heating', 'cooling', 'second heating'] as const) {
    it(`${segment}: its glass transition and its peaks, and nothing else, in six draws`, () => {
      const exact = preform(segment);
      for (let draw = 0; draw < 6; draw++) {
        const curve = noisy(exact, draw % 2 === 0 ? 'white' : '1/f', 0.003, 40 + draw);
        const { peaks, glass } = found(curve);
        const celsius = (t: number) => celsiusAt(segment, t);
        assert.equal(glass.length, 1, `glass steps in draw ${draw}`);
        near(celsius(glass[0].at), expected[segment].glass, 2, 'glass');
        assert.deepEqual(
          peaks.map((p) => p.direction),
          expected[segment].peaks.map(([, direction]) => direction),
        );
        peaks.forEach((p, i) => near(celsius(p.at), expected[segment].peaks[i][0], 1, 'peak'));
        // Neighbours separate: windows do not overlap.
        const windows = [...peaks, ...glass].map((e) => e.window).sort((a, b) => a.from - b.from);
        windows.forEach((w, i) => assert.ok(i === 0 || w.from >= windows[i - 1].to, `windows overlap in draw ${draw}`));
      }
    });
  }

  it('an exothermic effect that runs into an endothermic one is two peaks, parted where the curve crosses over', () => {
    const exact = sampled(0, 1800, 0.5, (t) => 1 + 0.001 * t - 250 * gauss(t, 850, 20) + 350 * gauss(t, 930, 18));
    const { peaks } = found(noisy(exact, 'white', 0.003, 8));
    assert.deepEqual(
      peaks.map((p) => p.direction),
      [-1, 1],
    );
    near(peaks[0].window.to, peaks[1].window.from, 1e-9, 'common limit');
    assert.ok(peaks[0].window.to > 860 && peaks[0].window.to < 915, `${peaks[0].window.to}`);
  });

  it('the start transient is found for what it is, and none where there is none', () => {
    const curve = noisy(preform('second heating'), 'white', 0.003, 3);
    const transient = startTransient(curve, estimateNoise(curve));
    assert.ok(transient !== null);
    near(transient.amplitude, 4, 0.1, 'amplitude, mW');
    near(transient.time, 90, 3, 'time constant, s');
    const plain = noisy(
      sampled(0, 1620, 0.5, (t) => zeroLine(COLD + t / 6, Infinity)),
      'white',
      0.003,
      3,
    );
    assert.equal(startTransient(plain, estimateNoise(plain)), null);
  });
});
