import assert from 'node:assert/strict';
import { cautions, type CautionFacts } from '../../server/src/reference/cautions';

const calm: CautionFacts = {
  emptyCrucible: false,
  hazards: ['none known, data sheet of 2026-03-01'],
  contains: ['calcite', 'quartz'],
  crucible: ['alumina', 'no lid'],
  atmospheres: [['nitrogen']],
  minTemperature: 25,
  maxTemperature: 900,
};

function codes(changed: Partial<CautionFacts>): string[] {
  return cautions({ ...calm, ...changed }).map((c) => c.code.replace('caution-', ''));
}

describe('cautions', () => {
  it('are silent on calcite and quartz in open alumina under nitrogen with its hazards stated', () => {
    assert.deepEqual(codes({}), []);
  });

  const cases: readonly (readonly [title: string, changed: Partial<CautionFacts>, expected: string[]])[] = [
    ['no hazard line', { hazards: [] }, ['hazard-not-stated']],
    ['no contains clause', { contains: [] }, ['unknown-specimen']],
    ['a word that is in no table', { contains: ['calcite', 'grey powder'] }, ['unknown-specimen']],
    ['an empty crucible needs neither', { emptyCrucible: true, hazards: [], contains: [] }, []],
    ['ammonium nitrate', { contains: ['ammonium nitrate'], maxTemperature: 120 }, ['energetic']],
    [
      'a nitrate with carbon black',
      { contains: ['potassium nitrate', 'carbon black'], maxTemperature: 200 },
      ['energetic'],
    ],
    ['a nitrate alone, cool', { contains: ['potassium nitrate'], maxTemperature: 200 }, []],
    ['a hazard line that says explosive', { hazards: ['may explode when dry'] }, ['energetic']],
    ['a hazard line that denies it', { hazards: ['not explosive, data sheet'] }, []],
    ['a sealed crucible', { crucible: ['steel', 'sealed'] }, ['sealed-crucible']],
    ['a pierced lid', { crucible: ['aluminium', 'pierced lid'] }, []],
    ['a lid with a hole that was closed before', { crucible: ['aluminium', 'closed, pierced before use'] }, []],
    ['hydrogen in argon', { atmospheres: [['hydrogen', 'argon']] }, ['flammable-gas']],
    ['carbon monoxide', { atmospheres: [['carbon monoxide']] }, ['flammable-gas', 'toxic-gas']],
    [
      'oxygen after nitrogen on polyethylene, cool',
      { contains: ['polyethylene'], atmospheres: [['nitrogen'], ['oxygen']], maxTemperature: 220 },
      ['oxygen-after-organics'],
    ],
    [
      'air after nitrogen on polyethylene, cool',
      { contains: ['polyethylene'], atmospheres: [['nitrogen'], ['air']], maxTemperature: 220 },
      ['oxygen-after-organics'],
    ],
    [
      'air all the time on polyethylene, cool',
      { contains: ['polyethylene'], atmospheres: [['air']], maxTemperature: 220 },
      [],
    ],
    ['air after nitrogen on calcite', { atmospheres: [['nitrogen'], ['air']] }, []],
    ['PVC to 600 °C', { contains: ['PVC'], maxTemperature: 600 }, ['toxic-gas']],
    ['PVC to 120 °C', { contains: ['PVC'], maxTemperature: 120 }, []],
    ['a start at -120 °C', { minTemperature: -120 }, ['cryogenic']],
    ['a start at 0 °C', { minTemperature: 0 }, []],
    ['zinc to 900 °C', { contains: ['zinc'] }, ['metal-vapour']],
    ['zinc to 300 °C', { contains: ['zinc'], maxTemperature: 300 }, []],
    ['brass to 900 °C', { contains: ['brass'] }, ['metal-vapour']],
    ['mercury', { contains: ['mercury'], maxTemperature: 100 }, ['toxic-gas', 'metal-vapour']],
  ];
  for (const [title, changed, expected] of cases) {
    it(`${title}: ${expected.length === 0 ? 'none' : expected.join(', ')}`, () => {
      assert.deepEqual(codes(changed).sort(), [...expected].sort());
    });
  }

  it('name the words and the gases that are meant', () => {
    const [caution] = cautions({ ...calm, contains: ['calcite', 'polyurethane foam'] });
    assert.deepEqual(caution?.about, ['isocyanates, hydrogen cyanide, carbon monoxide from polyurethane foam']);
    assert.equal(caution.clause, 'contains');
    const [unknown] = cautions({ ...calm, contains: ['calcite', 'grey powder'] });
    assert.match(unknown?.message ?? '', /"grey powder"/);
  });

  it('each defer to local codes and licensed people', () => {
    const all = cautions({
      emptyCrucible: false,
      hazards: [],
      contains: ['zinc', 'PVC', 'ammonium nitrate', 'grey powder'],
      crucible: ['steel', 'sealed'],
      atmospheres: [['hydrogen'], ['oxygen']],
      minTemperature: -100,
      maxTemperature: 900,
    });
    assert.equal(new Set(all.map((c) => c.code)).size, 9);
    for (const { message, source } of all) {
      assert.match(message, /Local codes and licensed, trained people decide/);
      assert.equal(source, 'common practice');
    }
  });
});
