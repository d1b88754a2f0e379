import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, quiet, silent } from './checked';
import { bell, programme, rise, signalOf } from './curves';

const p = programme(30, [{ to: 900, rate: 10 }]);
const own = ['run "a.csv"', '  mass 20 mg', '  endothermic up'];

function mass(statements: string, of: (T: number) => number) {
  const data = columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, of, 0.0004) }]);
  return checked(data, [...own, statements].join('\n'));
}

function heat(statements: string, of: (T: number) => number) {
  const data = columns(p, [{ signal: 'heatflow', unit: 'mW', values: signalOf(p, of, 0.003) }]);
  return checked(data, [...own, statements].join('\n'));
}

const loss = (T: number) => 20 - 3 * rise(T, 400, 8);

describe('checks of the ends of a mass step', () => {
  it('find nothing where both ends are level', () => {
    quiet(mass('step First 330..480 °C', loss));
  });

  it('see an end on the flank: 5 K change the step by more than 2 %, and the fix moves it to the level', () => {
    const found = fires(
      mass('step First 330..420 °C', loss),
      'window-edge-sensitive',
      /With its end 5 K (earlier|later) the step changes by 0\.\d+ %, 6\.\d+ % of itself \(limits 0\.1 % and 2 %\)\. It is level at 4[3-7]\d °C/,
    );
    assert.match(fixText(found), /^330\.\.4[3-7]\d °C$/);
    assert.equal(found.severity, 'error');
  });

  it('do not call an end sensitive where 5 K change the step by less than 2 % of it', () => {
    silent(mass('step First 330..445 °C', loss), 'window-edge-sensitive');
  });

  it('see a slope of 0.007 %/K at an end, and not 0.003 %/K', () => {
    const sloping = (percentPerKelvin: number) =>
      mass('step First 330..480 °C', (T) => loss(T) - 20 * (percentPerKelvin / 100) * Math.max(0, T - 460));
    fires(
      sloping(0.007),
      'window-edge-not-level',
      /At the end of the window the mass changes by 0\.007\d* %\/K \(limit 0\.005 %\/K/,
    );
    silent(sloping(0.003), 'window-edge-not-level');
  });

  it('see a slope that is small but takes 3 % of a small step within 5 K, and not 1 %', () => {
    // A step of 0.4 % of 20 mg; 0.0024 %/K over 5 K is 3 % of it.
    const small = (percentPerKelvin: number) =>
      mass(
        'step First 330..480 °C',
        (T) => 20 - 0.08 * rise(T, 400, 8) - 20 * (percentPerKelvin / 100) * Math.max(0, T - 470),
      );
    fires(small(0.0024), 'window-edge-not-level', /or 2 % of the step within 5 K/);
    silent(small(0.0008), 'window-edge-not-level');
  });

  it('leave the inner ends of a declared sum alone, and look at those of the sum', () => {
    const two = (T: number) => 20 - 3 * rise(T, 400, 8) - 3 * rise(T, 450, 8);
    const apart = 'step First 330..425 °C\nstep Second 425..520 °C';
    fires(mass(apart, two), 'window-edge-sensitive', /./, 2);
    const found = mass(`${apart}\nstep Both = First + Second`, two);
    silent(found, 'window-edge-sensitive');
    silent(found, 'window-edge-not-level');
  });
});

describe('checks of the ends of a peak', () => {
  const peak = (T: number) => 1 + 8 * bell(T, 400, 12);

  it('find nothing where both ends stand on the baseline', () => {
    silent(heat('peak P 340..460 °C', peak), 'window-edge-not-level');
  });

  it('see an end on the flank of the peak, which tilts the baseline at the other end as well', () => {
    fires(
      heat('peak P 340..418 °C', peak),
      'window-edge-not-level',
      /Just before the start of the window, at 340 °C, the heat flow is 0\.0\d+ mW off its baseline, \d+ times the noise \(limit 3\)/,
      2,
    );
  });
});
