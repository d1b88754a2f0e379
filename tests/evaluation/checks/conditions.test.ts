import assert from 'node:assert/strict';
import { checked, columns, fires, fixText, silent } from './checked';
import { programme, rise, signalOf } from './curves';

function run(clauses: readonly string[], statements = '', top = 620, from = 30) {
  const p = programme(from, [{ to: top, rate: 20 }]);
  const data = columns(p, [
    { signal: 'mass', unit: 'mg', values: signalOf(p, (T) => 20 - 3 * rise(T, 400, 8), 0.0004) },
  ]);
  return checked(data, ['run "a.csv"', '  mass 20 mg', ...clauses.map((c) => `  ${c}`), statements].join('\n'));
}

describe('checks of the crucible', () => {
  // Working limit of aluminium 600 °C, less 10 K (common practice).
  it('see a run that comes within 10 K of the working limit, and not one 12 K below', () => {
    const aluminium = ['crucible aluminium 40 µL', 'atmosphere nitrogen'];
    fires(
      run(aluminium, '', 594),
      'crucible-too-hot',
      /goes to 59[34](\.\d)? °C; aluminium works up to 600 °C.*less 10 K.*Suitable: .*alumina/,
    );
    silent(run(aluminium, '', 588), 'crucible-too-hot');
  });

  it('see a forbidden pair of specimen and crucible, and name others', () => {
    const lead = (crucible: string) => run([`crucible ${crucible}`, 'atmosphere nitrogen', 'contains lead'], '', 700);
    fires(lead('platinum'), 'crucible-incompatible', /Platinum with lead above 290 °C: .*Suitable: /);
    silent(run(['crucible platinum', 'atmosphere nitrogen', 'contains quartz'], '', 500), 'crucible-incompatible');
  });

  it('see a forbidden pair of gas and crucible above its temperature, and not below', () => {
    const graphite = (top: number) => run(['crucible graphite', 'atmosphere air', 'contains silver'], '', top);
    fires(graphite(620), 'crucible-incompatible', /Graphite with air above 400 °C/);
    silent(graphite(380), 'crucible-incompatible');
  });

  it('say what was not compared', () => {
    fires(run(['crucible alumina', 'atmosphere nitrogen']), 'compatibility-not-assessed', /"contains" is missing/);
    fires(
      run(['crucible unobtainium', 'atmosphere nitrogen', 'contains calcite']),
      'compatibility-not-assessed',
      /"unobtainium" is not in the table of crucibles/,
    );
    silent(run(['crucible alumina', 'atmosphere nitrogen', 'contains calcite']), 'compatibility-not-assessed');
  });

  it('ask nothing about the specimen of an empty crucible', () => {
    silent(run(['sample none', 'crucible alumina', 'atmosphere nitrogen']), 'compatibility-not-assessed');
  });
});

describe('cautions', () => {
  const cases: readonly (readonly [
    code: Parameters<typeof silent>[1],
    fires: readonly string[],
    silent: readonly string[],
  ])[] = [
    ['caution-hazard-not-stated', [], ['hazard "none known, data sheet of 2026-03-01"']],
    ['caution-unknown-specimen', [], ['contains calcite']],
    ['caution-energetic', ['contains ammonium nitrate'], ['contains calcite']],
    ['caution-sealed-crucible', ['crucible steel 30 µL, sealed'], ['crucible aluminium 40 µL, pierced lid']],
    ['caution-flammable-gas', ['atmosphere hydrogen 5 % + argon 95 %'], ['atmosphere argon']],
    [
      'caution-oxygen-after-organics',
      ['atmosphere nitrogen', 'atmosphere oxygen from 20 min', 'contains polyethylene'],
      ['atmosphere nitrogen', 'contains polyethylene'],
    ],
    ['caution-toxic-gas', ['contains polyvinyl chloride'], ['contains quartz']],
    ['caution-metal-vapour', ['contains zinc'], ['contains calcite']],
  ];
  for (const [code, when, not] of cases) {
    it(`${code} is a note that defers to licensed practice, and stays silent otherwise`, () => {
      const found = fires(run(when), code, /Local codes and licensed, trained people decide/);
      assert.equal(found.severity, 'note');
      silent(run(not), code);
    });
  }

  it('caution-cryogenic is given below 0 °C', () => {
    fires(run([], '', 100, -20), 'caution-cryogenic', /starts below 0 °C/);
    silent(run([], '', 100, 10), 'caution-cryogenic');
  });
});

describe('checks of the calibration', () => {
  const step = 'step First 330..480 °C';

  it('note once that none is stated and offer the clause; not where one is, nor where nothing is evaluated', () => {
    const found = fires(
      run([], step),
      'calibration-not-stated',
      /temperatures are shown as indicated, heats as exported/,
    );
    assert.match(fixText(found), /^calibrated temperature 3\d0\.\.4\d0 °C u 1 K$/);
    silent(run(['calibrated temperature 150..660 °C u 0.5 K'], step), 'calibration-not-stated');
    silent(run([]), 'calibration-not-stated');
  });

  it('see a result beyond the calibrated range, and not one inside', () => {
    fires(
      run(['calibrated temperature 150..400 °C u 0.5 K'], step),
      'outside-calibration',
      /First lies at 41\d(\.\d)? °C, 1\d K outside the calibrated range 150 °C to 400 °C/,
    );
    silent(run(['calibrated temperature 150..430 °C u 0.5 K'], step), 'outside-calibration');
  });
});
