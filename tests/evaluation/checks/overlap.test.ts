import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { programme, rise, signalOf } from './curves';

const p = programme(30, [{ to: 1000, rate: 10 }]);

function run(statements: string, of = (T: number) => 20 - 3 * rise(T, 720, 6) - 6 * rise(T, 900, 6)) {
  const data = columns(p, [{ signal: 'mass', unit: 'mg', values: signalOf(p, of, 0.0004) }]);
  return checked(data, `run "a.csv"\n  mass 20 mg\n${statements}`);
}

describe('checks of overlapping windows', () => {
  it('see 20 K in common, name both, and offer the middle', () => {
    const found = run('step First 660..800 °C\nstep Second 780..960 °C');
    const first = fires(found, 'window-overlap', /First and Second overlap by 20 K, from 780 °C to 800 °C/, 2);
    assert.equal(first.about, 'First');
    assert.equal(fixText(first), '660..790 °C');
    const second = found.filter((f) => f.code === 'window-overlap')[1];
    assert.deepEqual([second.about, fixText(second)], ['Second', '790..960 °C']);
  });

  it('say nothing where one window ends as the next begins', () => {
    silent(run('step First 660..800 °C\nstep Second 800..960 °C'), 'window-overlap');
  });

  it('offer to nest a window that lies inside another, and accept it nested', () => {
    const inner = 'step Inner 660..800 °C';
    const found = fires(run(`${inner}\nstep Outer 640..960 °C`), 'window-overlap', /overlap by 140 K/, 2);
    assert.equal(found.about, 'Inner');
    silent(run(`${inner}\nstep Outer 640..960 °C\n  encloses Inner`), 'window-overlap');
  });

  it('do not compare a sum with its parts', () => {
    silent(run('step First 660..800 °C\nstep Second 800..960 °C\nstep Both = First + Second'), 'window-overlap');
  });

  it('see two rules that found one effect, and not two that found two', () => {
    const same = run('step One around 700 °C\nstep Two around 740 °C');
    fires(
      same,
      'around-same-effect',
      /(One and Two|Two and One) were found at the same place: (100|9\d(\.\d)?) % of the smaller window/,
      2,
    );
    silent(run('step One around 720 °C\nstep Two around 900 °C'), 'around-same-effect');
  });
});
