import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { programme, signalOf } from './curves';

function run(rate: number, end: number, stated: string) {
  const p = programme(30, [{ to: end, rate }, { hold: 300 }]);
  const data = columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, () => 20) }]);
  return checked(data, `run "a.csv"\n  mass 20 mg\nprogramme\n${stated}`);
}

const heat = '  heat 30 °C to 700 °C at 10 K/min\n  hold 5 min';

describe('checks of the programme', () => {
  it('name the measured rate when it is 2.5 % off, and say nothing at 1.5 %', () => {
    const found = fires(
      run(10.25, 700, heat),
      'programme-mismatch',
      /heating 1 runs at 10\.25 K\/min instead of 10 K\/min \(2\.5\d* % off, limit 2 %\)/,
    );
    assert.equal(fixText(found), '30 °C to 700 °C at 10.25 K/min');
    silent(run(10.15, 700, heat), 'programme-mismatch');
  });

  it('name both rates of a run labelled 10 K/min that ran near 20', () => {
    fires(run(19.6, 700, heat), 'programme-mismatch', /19\.6 K\/min instead of 10 K\/min/);
  });

  it('name an end that is 3.5 K off, and say nothing at 2 K', () => {
    fires(run(10, 696.5, heat), 'programme-mismatch', /ends at 696(\.\d)? °C instead of 700 °C \(limit 3 K\)/);
    silent(run(10, 698, heat), 'programme-mismatch');
  });

  it('name a part that the run does not have', () => {
    fires(
      run(10, 700, `${heat}\n  cool to 100 °C at 20 K/min`),
      'programme-mismatch',
      /no cooling for this part; it has heating 1, hold 1/,
    );
    silent(run(10, 700, heat), 'programme-mismatch');
  });
});
