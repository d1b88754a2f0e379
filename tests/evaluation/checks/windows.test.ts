import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { bell, programme, rise, signalOf, type Programme } from './curves';

function run(p: Programme, statements: string) {
  const data = columns(p, [
    { signal: 'mass', unit: 'mg', values: signalOf(p, (T, t) => 20 - 3 * rise(T, 400, 8) - t * 1e-7, 0.0004) },
    { signal: 'heatflow', unit: 'mW', values: signalOf(p, (T) => 1 + 8 * bell(T, 400, 12), 0.003) },
  ]);
  return checked(data, `run "a.csv"\n  mass 20 mg\n  endothermic up\n${statements}`);
}

const p = programme(30, [{ to: 700, rate: 10 }, { hold: 720 }]);

describe('checks of windows', () => {
  it('see a window in minutes that spans a heating and a hold: an error for a peak, a warning for a step', () => {
    const peak = fires(
      run(p, 'peak P 60..70 min'),
      'window-crosses-segments',
      /60 min to 70 min spans heating 1, hold 1; heating 1 ends at 67 min/,
    );
    assert.equal(peak.severity, 'error');
    const step = fires(run(p, 'step S 60..70 min'), 'window-crosses-segments', /spans heating 1, hold 1/);
    assert.equal(step.severity, 'warning');
    silent(run(p, 'peak P 30..66 min'), 'window-crosses-segments');
  });

  it('see a heat-flow window that begins 2.5 min after the start of its segment, and not 3.5 min', () => {
    const found = fires(
      run(p, 'peak P 55..480 °C'),
      'window-in-transient',
      /begins 2\.5 min after the start of heating 1 \(limit 3 min\)/,
    );
    assert.equal(fixText(found), '60..480 °C');
    silent(run(p, 'peak P 65..480 °C'), 'window-in-transient');
    silent(run(p, 'step S 40..480 °C'), 'window-in-transient');
  });

  it('see nine readings in a window, and not eleven', () => {
    const sparse = programme(30, [{ to: 700, rate: 10 }], 12);
    fires(run(sparse, 'step S 392..409 °C'), 'too-few-points', /[89] readings of mass lie in the window \(at least 10/);
    silent(run(sparse, 'step S 389..411 °C'), 'too-few-points');
  });

  it('see a length in K in a hold, and put seconds in its place', () => {
    const hold = 'step Drift 69..77 min';
    const found = fires(
      run(p, `${hold}\n  span 10 K`),
      'kelvin-in-hold',
      /hold 1 stays at one temperature: 10 K is no length there.*60 s/,
    );
    assert.equal(fixText(found), '60 s');
    fires(run(p, `${hold}\n  smooth 5 K`), 'kelvin-in-hold', /5 K is no length.*30 s/);
    silent(run(p, `${hold}\n  span 60 s`), 'kelvin-in-hold');
    silent(run(p, 'step S 340..460 °C\n  span 10 K'), 'kelvin-in-hold');
  });

  it('see an edge 3 K before the end of its segment, and not 8 K', () => {
    fires(
      run(p, 'step S 340..697 °C'),
      'edge-not-budgeted',
      /The end of the window lies (2\.\d|3) K from the end of heating 1: it could not be moved by 5 K both ways/,
    );
    silent(run(p, 'step S 340..692 °C'), 'edge-not-budgeted');
  });
});

describe('checks of sampling', () => {
  it('see 13 readings across a half width, and not 17', () => {
    // Half width of a bell: 2.355 · 12 K.
    const every = (kelvin: number) => run(programme(30, [{ to: 700, rate: 10 }], kelvin * 6), 'peak P 340..460 °C');
    fires(every(2.2), 'peak-sparsely-sampled', /1[23] readings lie across the half width of P \(at least 15/);
    silent(every(1.7), 'peak-sparsely-sampled');
  });

  it('see a rate 13 % off inside the window of an onset, and not 7 % off, nor in a mass step', () => {
    const uneven = (share: number, statement = 'onset Start 300..500 °C\n  of mass') =>
      run(
        programme(30, [
          { to: 380, rate: 10 },
          { to: 410, rate: 10 * (1 - share) },
          { to: 1300, rate: 10 },
        ]),
        statement,
      );
    fires(
      uneven(0.13),
      'rate-uneven',
      /the rate is 8\.\d+ K\/min, 1[23](\.\d)? % off the (9\.9\d?|10) K\/min of heating 1 \(limit 10 %\)/,
    );
    silent(uneven(0.07), 'rate-uneven');
    silent(uneven(0.13, 'step First 300..500 °C'), 'rate-uneven');
  });
});
