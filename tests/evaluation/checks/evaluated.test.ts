import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { bell, programme, rise, signalOf } from './curves';

const p = programme(30, [{ to: 600, rate: 10 }]);

describe('findings of the evaluation itself', () => {
  it('need a direction for a heat, and offer both', () => {
    const heat = columns(p, [
      { signal: 'heatflow', unit: 'mW', values: signalOf(p, (T) => 1 + 8 * bell(T, 400, 10), 0.003) },
    ]);
    const gloss = (clause: string) => `run "a.csv"\n  mass 10 mg\n${clause}peak P 340..460 °C`;
    const found = fires(checked(heat, gloss('')), 'direction-not-declared', /P has a sign only once the run says/);
    assert.deepEqual([fixText(found, 0), fixText(found, 1)], ['endothermic up', 'endothermic down']);
    silent(checked(heat, gloss('  endothermic up\n')), 'direction-not-declared');
  });

  it('ask which heating holds a window that lies in two', () => {
    const cycle = programme(30, [
      { to: 300, rate: 10 },
      { to: 30, rate: 20 },
      { to: 300, rate: 10 },
    ]);
    const heat = columns(cycle, [
      { signal: 'heatflow', unit: 'mW', values: signalOf(cycle, (T) => 1 + 8 * bell(T, 200, 8), 0.003) },
    ]);
    const peak = (place: string) =>
      checked(heat, `run "a.csv"\n  mass 10 mg\n  endothermic up\npeak P 150..250 °C${place}`);
    fires(peak(''), 'window-ambiguous-segment', /150 °C to 250 °C lies in heating 1 and in heating 2/);
    silent(peak(' in heating 2'), 'window-ambiguous-segment');
  });

  it('note a step below 5·√2 times the noise, and not one above', () => {
    // Noise 4 µg: the limit is 28 µg.
    const step = (lost: number) => {
      const mass = signalOf(p, (T) => 20 - lost * rise(T, 400, 8), 0.004);
      return checked(
        columns(p, [{ signal: 'mass', unit: 'mg', values: mass }]),
        'run "a.csv"\n  mass 20 mg\nstep S 330..480 °C',
      );
    };
    fires(step(0.022), 'below-noise', /S is not detected: its loss of 0\.1\d? % is below 0\.14 %/);
    silent(step(0.034), 'below-noise');
  });
});
