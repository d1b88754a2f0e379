import { strict as assert } from 'node:assert';
import { aroundPeak } from '../../server/src/analysis/aroundPeak';
import type { Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { heatPeak } from '../../server/src/analysis/heatPeak';
import { needReference, readAnswers } from '../support/reference';
import { gauss, glassCelsius, glassCurve, noisy, peakCelsius, peakCurve, sampled } from './heatCurves';

const options = { within: 900, span: 60 };

describe('the window around a heat-flow effect', () => {
  const peak = sampled(0, 1800, 1, (t) => 2 + 0.003 * t + 300 * gauss(t, 900, 20));

  it('ends in the middle of the first straight stretch on both sides', () => {
    const window = aroundPeak(peak, null, { ...options, at: 900 });
    assert.ok(window !== null);
    // A Gaussian is down to 3e-4 of its height at 4.0 sigma; half a span further lies the middle.
    for (const reach of [900 - window.from, window.to - 900]) {
      assert.ok(reach > 80 + 30 - 6 && reach < 80 + 30 + 12, `${reach} s`);
    }
  });

  it('is the same from anywhere on the effect, to within a part of the span', () => {
    for (const at of [875, 890, 915, 930]) {
      const window = aroundPeak(peak, null, { ...options, at });
      assert.ok(window !== null, `at ${at}`);
      assert.ok(Math.abs(window.from - 790) < 12 && Math.abs(window.to - 1010) < 12, JSON.stringify(window));
    }
  });

  it('is null where the data end before the curve is straight, or it is not within reach', () => {
    const cut = sampled(0, 960, 1, (t) => 2 + 0.003 * t + 300 * gauss(t, 900, 20));
    assert.equal(aroundPeak(cut, null, { ...options, at: 900 }), null);
    assert.equal(aroundPeak(peak, null, { ...options, within: 90, at: 900 }), null);
    assert.notEqual(aroundPeak(peak, null, { ...options, within: 130, at: 900 }), null);
    assert.equal(aroundPeak(peak, null, { ...options, at: 2000 }), null);
  });

  it('stops between two peaks where the curve is straight between them', () => {
    const two = sampled(0, 2400, 1, (t) => 300 * gauss(t, 900, 20) - 200 * gauss(t, 1300, 20));
    const window = aroundPeak(two, null, { ...options, at: 900 });
    assert.ok(window !== null && window.to < 1180, JSON.stringify(window));
  });
});

describe('the window around a noisy effect (reference curves b and c, 200 draws)', function () {
  this.timeout(120_000);
  let b: Curve;
  let c: Curve;
  let area: number;
  before(function () {
    const folder = needReference(this);
    b = peakCurve(folder, 'b_emg_peak');
    c = glassCurve(folder, 'c_glass_parallel');
    area = (readAnswers(folder) as Record<string, Record<string, number>>).b_emg_peak.area_mJ;
  });

  const scatter = (values: readonly number[]) => {
    const mean = values.reduce((x, y) => x + y, 0) / values.length;
    return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
  };

  for (const kind of ['white', '1/f'] as const) {
    for (const sigma of [0.02, 0.1]) {
      it(`peak, ${kind} noise of ${sigma} mW: edges scatter by less than 3 K and the area stays within U in 90 %`, () => {
        const ends: { from: number; to: number }[] = [];
        let inside = 0;
        for (let draw = 0; draw < 200; draw++) {
          const curve = noisy(b, kind, sigma, 3000 + draw);
          const noise = estimateNoise(curve);
          const window = aroundPeak(curve, noise, { ...options, at: 348 });
          assert.ok(window !== null, `draw ${draw}`);
          ends.push(window);
          const read = (from: number, to: number, propagate: boolean) =>
            heatPeak(
              curve,
              { from: window.from + from, to: window.to + to },
              {
                baseline: 'linear',
                spanFrom: 60,
                spanTo: 60,
                smooth: 30,
                noise,
                propagate,
              },
            )!.area;
          const found = read(0, 0, true);
          const edge = (a: number, z: number) => Math.abs(a - z) / 2 / Math.sqrt(3);
          const u = Math.hypot(
            found.noise,
            edge(read(-30, 0, false).value, read(30, 0, false).value),
            edge(read(0, -30, false).value, read(0, 30, false).value),
          );
          if (Math.abs(found.value - area) <= 2 * u) inside++;
        }
        assert.ok(scatter(ends.map((w) => peakCelsius(w.from))) < 3);
        assert.ok(scatter(ends.map((w) => peakCelsius(w.to))) < 3);
        assert.ok(inside >= 180, `${inside} of 200`);
      });
    }

    it(`glass, ${kind} noise of 0.01 mW: edges scatter by less than 3 K, and clear the transition`, () => {
      const ends: { from: number; to: number }[] = [];
      for (let draw = 0; draw < 200; draw++) {
        const curve = noisy(c, kind, 0.01, 3000 + draw);
        const window = aroundPeak(curve, estimateNoise(curve), { within: 450, span: 30, at: 120 });
        assert.ok(window !== null, `draw ${draw}`);
        ends.push(window);
      }
      const from = ends.map((w) => glassCelsius(w.from));
      const to = ends.map((w) => glassCelsius(w.to));
      assert.ok(scatter(from) < 3 && scatter(to) < 3);
      assert.ok(Math.max(...from) < 92 && Math.min(...to) > 108);
    });
  }
});
