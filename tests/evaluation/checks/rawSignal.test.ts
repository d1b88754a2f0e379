import { checked, columns, fires, fixText, silent } from './checked';
import { programme, rise, signalOf } from './curves';
import assert from 'node:assert/strict';

const gloss = 'run "a.csv"\n  mass 20 mg\nstep First 340..560 °C';
const ramp = programme(30, [{ to: 700, rate: 10 }]);
const mass = signalOf(ramp, (T) => 20 - 3 * rise(T, 400, 8), 0.0004);
const row = (T: number) => ramp.temperature.findIndex((x) => x >= T);

function withMass(change: (values: Float64Array) => void, text = gloss) {
  const values = Float64Array.from(mass);
  change(values);
  return checked(columns(ramp, [{ signal: 'mass', unit: 'mg', values }]), text);
}

describe('checks of the raw signal', () => {
  it('find nothing in a clean record', () => {
    const found = withMass(() => undefined);
    for (const code of ['signal-saturated', 'gap-in-data', 'temperature-reverses', 'jump-in-mass'] as const) {
      silent(found, code);
    }
    silent(found, 'already-smoothed');
    silent(found, 'time-not-increasing');
  });

  it('see five equal extremes of a cut-off peak, and not four', () => {
    const text = 'run "a.csv"\n  mass 20 mg\n  endothermic up\npeak P 340..460 °C';
    const cut = (n: number) => {
      const heat = signalOf(ramp, (T) => 10 * Math.exp(-0.5 * ((T - 400) / 10) ** 2), 0.003);
      const at = row(400) - 2;
      for (let i = 0; i < n; i++) heat[at + i] = 10.2;
      return checked(columns(ramp, [{ signal: 'heatflow', unit: 'mW', values: heat }]), text);
    };
    fires(cut(5), 'signal-saturated', /5 readings in a row at 39\d.*limit 5/);
    silent(cut(4), 'signal-saturated');
  });

  it('do not take the level start of a rounded mass for a saturation', () => {
    const rounded = (values: Float64Array) => values.forEach((v, i) => (values[i] = Math.round(v * 100) / 100));
    silent(withMass(rounded), 'signal-saturated');
  });

  it('see a gap of more than three intervals in a window, and not one of three, nor one elsewhere', () => {
    const gap = (rows: number, T: number) => withMass((v) => v.fill(NaN, row(T), row(T) + rows));
    fires(gap(3, 400), 'gap-in-data', /No reading for 4 s after 399.*4 times the usual interval \(limit 3\)/);
    silent(gap(2, 400), 'gap-in-data');
    silent(gap(30, 600), 'gap-in-data');
  });

  it('leave a masked stretch alone', () => {
    const masked = `${gloss}\nmask 398..402 °C because "carrier touched"`;
    silent(
      withMass(() => undefined, masked),
      'gap-in-data',
    );
  });

  it('count rows that are not later than the row before', () => {
    const time = Float64Array.from(ramp.time);
    time[row(400)] = time[row(400) - 1];
    const data = columns({ ...ramp, time }, [{ signal: 'mass', unit: 'mg', values: mass }]);
    const found = fires(checked(data, gloss), 'time-not-increasing', /1 row is not later.*data row 2221/);
    assert.equal(found.only, undefined);
    silent(checked(columns(ramp, [{ signal: 'mass', unit: 'mg', values: mass }]), gloss), 'time-not-increasing');
  });

  it('see a reversal of the temperature above 0.3 K in a window, and not one below', () => {
    const reversing = (size: number) => {
      const temperature = Float64Array.from(ramp.temperature);
      // Held back for a minute and then caught up with: a trough of `size` below the furthest point.
      const at = row(400);
      for (let i = 0; i < 60; i++) temperature[at + i] = temperature[at] - size * Math.sin((Math.PI * i) / 59);
      return checked(columns({ ...ramp, temperature }, [{ signal: 'mass', unit: 'mg', values: mass }]), gloss);
    };
    fires(reversing(0.36), 'temperature-reverses', /turns back by 0.34 K .*limit 0.3 K/);
    silent(reversing(0.3), 'temperature-reverses');
  });

  it('see a mass averaged over 7 readings before the export (correlation 6/7), and not one averaged over 5 (4/5)', () => {
    const averaged = (n: number) =>
      withMass((v) => {
        const raw = Float64Array.from(v);
        const half = (n - 1) / 2;
        for (let i = half; i < v.length - half; i++) {
          v[i] = raw.subarray(i - half, i + half + 1).reduce((a, b) => a + b, 0) / n;
        }
      });
    fires(averaged(7), 'already-smoothed', /residuals of mass are correlated by 0\.8\d \(limit 0\.8\)/);
    silent(averaged(5), 'already-smoothed');
  });

  it('cannot tell smoothing where the readings are rounded, and say nothing', () => {
    silent(
      withMass((v) => v.forEach((x, i) => (v[i] = Math.round(x * 100) / 100))),
      'already-smoothed',
    );
  });

  it('see a jump of more than ten times the noise in a window, and offer a mask', () => {
    const jump = (micrograms: number, T = 500) =>
      withMass((v) => {
        for (let i = row(T); i < v.length; i++) v[i] -= micrograms / 1000;
      });
    const found = fires(
      jump(8),
      'jump-in-mass',
      /jumps by -0\.0[34]\d* % between two readings at 499.*1\d times its noise/,
    );
    assert.match(fixText(found), /^mask 46\.\d+\.\.47\.\d+ min because "/);
    silent(jump(2.5), 'jump-in-mass');
    silent(jump(8, 600), 'jump-in-mass');
  });

  it('see a knock of three seconds', () => {
    fires(
      withMass((v) => {
        for (let i = 0; i < 3; i++) v[row(500) + i] += 0.04;
      }),
      'jump-in-mass',
      /1 more exceed/,
    );
  });

  it('do not take a fast but smooth loss for a jump', () => {
    silent(
      withMass((v) => v.forEach((_, i) => (v[i] = 20 - 9 * rise(ramp.temperature[i], 400, 0.7)))),
      'jump-in-mass',
    );
  });

  it('take a higher limit from a rule of the gloss', () => {
    const rule = `${gloss}\nrule gap-in-data 6 because "the export thins level parts"`;
    const gap = (text: string) => withMass((v) => v.fill(NaN, row(400), row(400) + 4), text);
    fires(gap(gloss), 'gap-in-data', /5 times the usual interval/);
    silent(gap(rule), 'gap-in-data');
  });
});
