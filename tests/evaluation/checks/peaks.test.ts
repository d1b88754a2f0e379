import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, quiet, silent } from './checked';
import { bell, programme, rise, signalOf } from './curves';

const p = programme(30, [{ to: 600, rate: 10 }]);
const sigma = 0.003;

function run(statement: string, of: (T: number) => number, clauses = '  endothermic up', mass?: (T: number) => number) {
  const heat = { signal: 'heatflow', unit: 'mW', values: signalOf(p, of, sigma) } as const;
  const more =
    mass === undefined ? [] : [{ signal: 'mass', unit: 'mg', values: signalOf(p, mass, 0.0004, 3) } as const];
  return checked(columns(p, [heat, ...more]), `run "a.csv"\n  mass 10 mg\n${clauses}\n${statement}`);
}

const plainPeak = (T: number) => 1 + 0.001 * T + 8 * bell(T, 400, 10);
const P = 'peak P 340..460 °C';

describe('checks of a heat-flow peak', () => {
  it('find nothing in a plain peak on a straight baseline', () => {
    quiet(run(P, plainPeak));
  });

  it('see an exothermic part of 8 % of the area, and not one of 3 %', () => {
    // Areas of bells are as height times width.
    const mixed = (share: number) => (T: number) => plainPeak(T) - 8 * share * bell(T, 365, 10 / 2) * 2;
    const found = fires(
      run(P, mixed(0.08)),
      'exo-and-endo-together',
      /other side of the baseline, with \d(\.\d+)? % of the area \(limit 5 %\)/,
    );
    assert.match(fixText(found), /^3[678]\d\.\.460 °C$/);
    silent(run(P, mixed(0.03)), 'exo-and-endo-together');
  });

  it('call a small part on the wrong side a crossing baseline: 3 % of the height, and not 0.5 %', () => {
    const dip = (share: number) => (T: number) => plainPeak(T) - 8 * share * bell(T, 362, 5);
    fires(
      run(P, dip(0.03)),
      'baseline-crosses-curve',
      /wrong side of the curve, by [23](\.\d+)? % of the height \(limit 1 %\)/,
    );
    silent(run(P, dip(0.005)), 'baseline-crosses-curve');
  });

  it('see a step of 7 % of the height under a straight baseline and offer a sigmoidal one; not at 3 %', () => {
    const stepped = (share: number) => (T: number) => plainPeak(T) + 8 * share * rise(T, 400, 4);
    const found = fires(
      run(P, stepped(0.07)),
      'step-under-straight-baseline',
      /0\.5\d mW apart, [67](\.\d+)? % of its height \(limit 5 %\)/,
    );
    assert.equal(fixText(found), 'baseline sigmoidal');
    silent(run(P, stepped(0.03)), 'step-under-straight-baseline');
    silent(run(`${P}\n  baseline sigmoidal`, stepped(0.07)), 'step-under-straight-baseline');
  });

  it('see areas that spread by more than 3 % over the baselines, and not on a straight one', () => {
    const stepped = (share: number) => (T: number) => plainPeak(T) + 8 * share * rise(T, 400, 4);
    fires(
      run(P, stepped(0.03)),
      'baseline-matters',
      /spread by \d+(\.\d+)? % \(limit 3 %\); against linear: tangent left/,
    );
    silent(run(P, plainPeak), 'baseline-matters');
  });

  it('see a sigmoidal baseline over two effects of opposite sign, whose share of area leaves 0..1', () => {
    const mixed = (T: number) => plainPeak(T) - 4 * bell(T, 440, 8);
    const sigmoidal = 'peak P 340..490 °C\n  baseline sigmoidal';
    const found = fires(
      run(sigmoidal, mixed),
      'baseline-not-converged',
      /does not settle: the share of area passed runs from .* to 1\.\d+ instead of 0 to 1/,
    );
    assert.equal(fixText(found), 'linear');
    silent(run(`${P}\n  baseline sigmoidal`, plainPeak), 'baseline-not-converged');
  });

  it('see a sign that contradicts the expectation, and the two ways out', () => {
    const found = fires(
      run(`${P}\n  expect exothermic`, plainPeak),
      'effect-contradicts',
      /P is endothermic \(area .* mW·s with endothermic up\) but exothermic is expected/,
    );
    assert.deepEqual([fixText(found, 0), fixText(found, 1)], ['endothermic', 'down']);
    silent(run(`${P}\n  expect endothermic`, plainPeak), 'effect-contradicts');
    silent(run(`${P}\n  expect exothermic`, plainPeak, '  endothermic down'), 'effect-contradicts');
  });

  it('see a smoothing that takes more than 5 % from the flank, and not the default', () => {
    const narrow = (T: number) => 1 + 8 * bell(T, 400, 2);
    fires(
      run(`${P}\n  smooth 13 K`, narrow),
      'smoothing-too-wide',
      /smoothed over 13 K, which takes \d+(\.\d+)? % from the flank \(limit 5 %\)/,
    );
    silent(run(P, narrow), 'smoothing-too-wide');
  });

  it('see a smoothing above 15 K, and not one of 14 K on a wide peak', () => {
    const wide = (T: number) => 1 + 8 * bell(T, 400, 15);
    fires(run(`${P}\n  smooth 16 K`, wide), 'smoothing-too-wide', /smoothed over 16 K \(limit 15 K\)/);
    silent(run(`${P}\n  smooth 14 K`, wide), 'smoothing-too-wide');
  });

  it('see 1.2 % of the mass lost before the peak, and not 0.8 %', () => {
    const losing = (share: number, per = '') =>
      run(`${P}${per}`, plainPeak, '  endothermic up', (T) => 10 - 10 * share * rise(T, 150, 8));
    const found = fires(
      losing(0.012),
      'mass-lost-before-peak',
      /1\.[12]\d* % of the initial mass is lost before the window \(limit 1 %\)/,
    );
    assert.equal(fixText(found), 'per mass at start');
    silent(losing(0.008), 'mass-lost-before-peak');
    silent(losing(0.012, '\n  per mass at start'), 'mass-lost-before-peak');
  });
});
