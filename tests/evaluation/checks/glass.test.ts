import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, quiet, silent } from './checked';
import { bell, programme, rise, signalOf, type Programme } from './curves';

const cycle = programme(20, [
  { to: 160, rate: 10 },
  { to: 20, rate: 10 },
  { to: 160, rate: 10 },
]);
const single = programme(20, [{ to: 160, rate: 10 }]);
/** 0.29 J/(g·K) for 10 mg at 10 K/min: 0.483 mW. */
const height = (0.29 * 10 * 10) / 60;
const glassy = (T: number, middle = 80, size = height) => 2 + 0.004 * T + size * rise(T, middle, 2.5);

function run(statements: string, of: (T: number) => number, p: Programme = cycle, mass?: (T: number) => number) {
  const signals = [
    { signal: 'heatflow', unit: 'mW', values: signalOf(p, of, 0.003) } as const,
    ...(mass === undefined ? [] : [{ signal: 'mass', unit: 'mg', values: signalOf(p, mass, 0.0004, 3) } as const]),
  ];
  return checked(columns(p, signals), `run "pet.csv"\n  mass 10 mg\n  endothermic up\n${statements}`);
}

const second = 'glass Tg 55..105 °C in heating 2';

describe('checks of a glass transition', () => {
  it('find nothing, not even a note, in a second heating with room on both sides', () => {
    const found = run(second, (T) => glassy(T));
    quiet(found);
    silent(found, 'history-unknown');
  });

  it('note that nothing is known of the history before a first heating, unless a note says it', () => {
    const first = 'glass Tg 55..105 °C in heating 1';
    fires(
      run(first, (T) => glassy(T)),
      'history-unknown',
      /No cooling precedes heating 1/,
    );
    silent(
      run(`${first}\n  note "as received, stored 14 days at 23 °C"`, (T) => glassy(T)),
      'history-unknown',
    );
  });

  it('see a step of 0.017 J/(g·K), and not 0.025', () => {
    const step = (size: number) => run(second, (T) => glassy(T, 80, (size * 100) / 60));
    fires(step(0.017), 'glass-step-small', /step of Tg is 0\.01\d+ J\/\(g·K\) \(limit 0\.02 J\/\(g·K\)\)/);
    silent(step(0.026), 'glass-step-small');
  });

  it('see lines of 8 K, and not of 12 K', () => {
    const found = fires(
      run(`${second}\n  span 8 K`, (T) => glassy(T)),
      'lines-too-short',
      /The line before Tg rests on (8|7\.\d) K \(limit 10 K\)/,
      2,
    );
    assert.equal(fixText(found), '15 K');
    silent(
      run(`${second}\n  span 12 K`, (T) => glassy(T)),
      'lines-too-short',
    );
  });

  it('see a line that is bent by a peak that reaches into it', () => {
    const disturbed = (size: number) => (T: number) => glassy(T) + size * bell(T, 112, 6);
    fires(
      run(second, disturbed(0.6)),
      'window-edge-not-level',
      /The line after Tg, at 105 °C, is bent by \d+(\.\d)? % of the step/,
    );
    silent(run(second, disturbed(0)), 'window-edge-not-level');
  });

  it('see an overshoot of 14 % of the step and offer equal areas; not at 6 %', () => {
    // 5 K after the middle the step is done to 88 %: what stands above the line after it is `share` of the step.
    const aged = (share: number) => (T: number) => glassy(T) + height * (share + 0.12) * bell(T, 85, 1.8);
    const wide = 'glass Tg 55..115 °C in heating 2';
    const found = fires(
      run(wide, aged(0.14)),
      'relaxation-overshoot',
      /overshoots the line after Tg by 1\d(\.\d)? % of the step \(limit 10 %\)/,
    );
    assert.equal(fixText(found), 'by equal areas');
    silent(run(wide, aged(0.06)), 'relaxation-overshoot');
    silent(run(`${wide}\n  by equal areas`, aged(0.14)), 'relaxation-overshoot');
  });

  it('see a transition 17 K above the start of its segment, and not 25 K', () => {
    // The tangent of a logistic step meets the line before it two widths below its middle.
    const near = (above: number) => run('glass Tg 22..105 °C in heating 2', (T) => glassy(T, 20 + above + 5));
    fires(
      near(17),
      'glass-near-start',
      /Tg begins at 3\d(\.\d)? °C, 1[78](\.\d)? K above the start of heating 2 at 20(\.\d)? °C \(limit 20 K\)/,
    );
    silent(near(25), 'glass-near-start');
  });

  it('see 0.4 % lost by the end of the window, and not 0.2 %', () => {
    const drying = (share: number) =>
      run(
        'glass Tg 55..105 °C',
        (T) => glassy(T),
        single,
        (T) => 10 - 10 * share * rise(T, 60, 5),
      );
    fires(
      drying(0.004),
      'mass-lost-before-glass',
      /By the end of the window 0\.(39\d*|4\d*) % of the initial mass is lost \(limit 0\.3 %\)/,
    );
    silent(drying(0.002), 'mass-lost-before-glass');
  });

  it('note two transitions measured at 5 and 20 K/min in one expression, and not at 10 and 20', () => {
    const rates = (a: number, b: number) =>
      run(
        `glass A_first 55..105 °C in heating 1\nglass B_second 55..105 °C in heating 2\nlet shift = B_second.midpoint - A_first.midpoint`,
        (T) => glassy(T),
        programme(20, [
          { to: 160, rate: a },
          { to: 20, rate: 10 },
          { to: 160, rate: b },
        ]),
      );
    // 3 K · log10(4) = 1.8 K; 3 K · log10(2) = 0.9 K.
    fires(
      rates(5, 20),
      'glass-rates-differ',
      /A_first was heated at 5 and B_second at 20 K\/min: about 1\.8 K of their difference.*\(limit 1 K\)/,
    );
    silent(rates(10, 20), 'glass-rates-differ');
  });
});
