import { checked, columns, fires, silent } from './checked';
import { programme, rise, signalOf, type Programme } from './curves';

function run(p: Programme, statements: string, mass: (T: number, t: number) => number) {
  const data = columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, mass, 0.0004) }]);
  return checked(data, ['run "a.csv"', '  mass 20 mg', statements].join('\n'));
}

const held = programme(30, [{ to: 800, rate: 20 }, { hold: 900 }]);
const holdStart = (770 / 20) * 60;
const drifting = (perMinute: number) => (T: number, t: number) =>
  20 - 3 * rise(T, 400, 8) - (20 * perMinute * Math.max(0, t - holdStart)) / 6000;

describe('checks of the mass after its steps', () => {
  it('see a drift of 0.025 %/min in the last hold, and not 0.015 %/min', () => {
    const step = 'step First 330..500 °C';
    fires(
      run(held, step, drifting(0.025)),
      'drift-in-hold',
      /last half of hold 1 the mass changes by -0\.025 %\/min \(limit 0\.02 %\/min\)/,
    );
    silent(run(held, step, drifting(0.015)), 'drift-in-hold');
  });

  it('leave a hold to the residue that is read in it: 0.025 %/min is told once', () => {
    const both = 'step First 330..500 °C\nresidue Rest at end of hold 1';
    const found = run(held, both, drifting(0.025));
    silent(found, 'drift-in-hold');
    fires(
      found,
      'residue-changing',
      /Where Rest is read the mass still changes by -0\.02[45]? %\/min \(limit 0\.02 %\/min\)/,
    );
  });

  it('do not call a residue changing at 0.015 %/min', () => {
    silent(run(held, 'residue Rest at end of hold 1', drifting(0.015)), 'residue-changing');
  });

  it('see a residue of -0.15 %, and not -0.05 %', () => {
    const leaving = (rest: number) => run(held, 'residue Ash at 700 °C', (T) => 20 - (20 - rest) * rise(T, 400, 8));
    fires(leaving(-0.03), 'residue-negative', /Ash is -0\.15\d? %, below -0\.1 %/);
    silent(leaving(-0.01), 'residue-negative');
  });

  it('see 0.15 % taken up in cooling before the residue is read, and not 0.06 %, nor when it is read hot', () => {
    const cycle = programme(30, [{ to: 800, rate: 20 }, { hold: 300 }, { to: 300, rate: 20 }]);
    const regained = (share: number, statement: string) =>
      run(cycle, statement, (T, t) =>
        t > holdStart + 300 ? 17 + 20 * share * rise(-T, -600, 15) : 20 - 3 * rise(T, 400, 8),
      );
    const cold = 'residue Rest at end of cooling 1';
    fires(
      regained(0.0015, cold),
      'regain-on-cooling',
      /rises by 0\.15\d? % in cooling 1, from .* to .*\(limit 0\.1 %\)/,
    );
    silent(regained(0.0006, cold), 'regain-on-cooling');
    silent(regained(0.0015, 'residue Rest at end of hold 1'), 'regain-on-cooling');
  });
});
