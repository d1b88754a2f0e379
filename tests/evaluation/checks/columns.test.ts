import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { programme, rise, signalOf } from './curves';

const ramp = programme(30, [{ to: 700, rate: 10 }]);
const step = 'step First 340..460 °C';
const shape = (T: number) => 1 - 0.15 * rise(T, 400, 8);
const massFrom = (start: number, unit: 'mg' | '1') =>
  columns(ramp, [{ signal: 'mass', unit, values: signalOf(ramp, (T) => start * shape(T)) }]);

describe('checks of the scale of a column', () => {
  it('doubt a mass fraction that does not start between 95 and 102 %', () => {
    const gloss = `run "a.csv"\n${step}`;
    const found = fires(checked(massFrom(0.94, '1'), gloss), 'scale-doubtful', /starts at 94 %, outside 95 to 102 %/);
    assert.equal(fixText(found), 'columns\n  mass column 3 in mg');
    silent(checked(massFrom(0.96, '1'), gloss), 'scale-doubtful');
    fires(checked(massFrom(1.03, '1'), gloss), 'scale-doubtful', /starts at 103 %/);
    silent(checked(massFrom(1.01, '1'), gloss), 'scale-doubtful');
  });

  it('doubt a mass in mg that starts at 100.3 while the specimen weighs 12 mg, and not one that starts at 101', () => {
    const gloss = `run "a.csv"\n  mass 12 mg\n${step}`;
    const found = fires(
      checked(massFrom(100.3, 'mg'), gloss),
      'scale-doubtful',
      /starts at 100\.3, and the specimen weighs 12 mg/,
    );
    assert.equal(fixText(found), 'columns\n  mass column 3 in %');
    silent(checked(massFrom(101, 'mg'), gloss), 'scale-doubtful');
    silent(checked(massFrom(100.3, 'mg'), `run "a.csv"\n  mass 100.3 mg\n${step}`), 'scale-doubtful');
  });

  it('compare a specific heat flow with the plain one over the mass', () => {
    const gloss = 'run "a.csv"\n  mass 10 mg\n  endothermic up\npeak P 340..460 °C';
    const both = (factor: number) => {
      const plain = signalOf(ramp, (T) => 5 * Math.exp(-0.5 * ((T - 400) / 10) ** 2));
      return columns(ramp, [
        { signal: 'heatflow', unit: 'mW', values: plain },
        { signal: 'heatflow', unit: 'W/g', values: plain.map((v) => v / factor) },
      ]);
    };
    fires(checked(both(10.2), gloss), 'scale-doubtful', /differ by a factor of 10\.2, but the specimen weighs 10 mg/);
    silent(checked(both(10.05), gloss), 'scale-doubtful');
  });

  it('doubt 310 K/min, and not 290', () => {
    const fast = (rate: number) => {
      const p = programme(30, [{ to: 700, rate }], 0.05);
      return checked(
        columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, (T) => 20 * shape(T)) }]),
        `run "a.csv"\n  mass 20 mg\n${step}`,
      );
    };
    const found = fires(fast(310), 'time-scale-doubtful', /heating 1 runs at 310 K\/min \(limit 300\)/);
    assert.equal(fixText(found), 'columns\n  time column 1 in min');
    silent(fast(290), 'time-scale-doubtful');
  });

  it('see a factor of sixty to the programme', () => {
    const gloss = (rate: string) => `run "a.csv"\n  mass 20 mg\nprogramme\n  heat to 700 °C at ${rate}\n${step}`;
    fires(
      checked(massFrom(20, 'mg'), gloss('600 K/min')),
      'time-scale-doubtful',
      /runs at 10 K\/min where 600 are stated: a factor of sixty/,
    );
    silent(checked(massFrom(20, 'mg'), gloss('300 K/min')), 'time-scale-doubtful');
  });
});
