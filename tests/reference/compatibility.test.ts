import assert from 'node:assert/strict';
import { compatibility } from '../../server/src/reference/compatibility';
import { findCrucible } from '../../server/src/reference/crucibles';
import { tooHot, workingLimit } from '../../server/src/reference/workingLimit';

function uses(gases: string): readonly { words: string; upTo: number | null }[] {
  return gases.split('>').map((part) => {
    const [words, upTo] = part.split('@');
    return { words: words!.trim(), upTo: upTo === undefined ? null : Number(upTo) };
  });
}

function found(crucible: string, gases: string, specimen: string, max: number): string[] {
  const result = compatibility(crucible, uses(gases), specimen.split(','), max);
  assert.deepEqual(result.notAssessed, [], 'everything is in the tables');
  return result.problems.map((p) => `${p.kind} ${p.culprit}`);
}

describe('crucible, gas and specimen that react are found, near misses are not (common practice)', () => {
  const cases: readonly (readonly [
    crucible: string,
    gas: string,
    specimen: string,
    max: number,
    problem: string | null,
  ])[] = [
    ['platinum', 'nitrogen', 'lead glass', 600, 'specimen lead oxide'],
    ['platinum', 'air', 'lead glass', 600, null],
    ['platinum', 'air', 'aluminium alloy', 700, 'specimen aluminium'],
    ['platinum', 'air', 'aluminium alloy', 450, null],
    ['alumina', 'argon', 'aluminium alloy', 700, null],
    ['platinum', 'argon', 'tin', 250, 'specimen tin'],
    ['platinum rhodium', 'argon', 'tin', 250, 'specimen tin'],
    ['platinum', 'nitrogen', 'soda lime glass', 700, null],
    ['platinum', 'nitrogen', 'coal', 950, 'specimen organic'],
    ['platinum', 'air', 'coal', 950, null],
    ['platinum', 'hydrogen', 'quartz', 950, 'specimen silica'],
    ['platinum', 'hydrogen', 'nickel oxide', 500, 'specimen reducible oxide'],
    ['platinum', 'air', 'nickel oxide', 500, null],
    ['platinum', 'air', 'gypsum, carbon black', 700, 'specimen sulfate'],
    ['platinum', 'air', 'gypsum', 700, null],
    ['aluminium', 'nitrogen', 'polyethylene terephthalate', 300, null],
    ['aluminium', 'nitrogen', 'polyvinyl chloride', 300, 'product hydrogen chloride'],
    ['aluminium', 'nitrogen', 'polyvinyl chloride', 120, null],
    ['alumina', 'nitrogen', 'polyvinyl chloride', 600, null],
    ['aluminium', 'nitrogen', 'zinc', 450, 'specimen zinc'],
    ['aluminium', 'nitrogen', 'zinc', 350, null],
    ['aluminium', 'nitrogen', 'indium', 150, null],
    ['aluminium', 'nitrogen', 'sodium hydroxide', 100, 'specimen alkali hydroxide'],
    ['alumina', 'carbon dioxide', 'dolomite,calcite,quartz', 1000, null],
    ['alumina', 'air', 'titanium', 900, 'specimen reactive metal'],
    ['yttria', 'argon', 'titanium', 1700, null],
    ['alumina', 'air', 'lead oxide', 900, 'specimen lead oxide'],
    ['alumina', 'nitrogen > air', 'clay', 1100, null],
    ['graphite', 'air', 'silver', 600, 'gas air'],
    ['graphite', 'argon', 'silver', 1000, null],
    ['graphite', 'argon > air@300', 'silver', 1000, null],
    ['graphite', 'argon > air@700', 'silver', 1000, 'gas air'],
    ['graphite', 'argon', 'calcite', 950, 'specimen carbonate'],
    ['tungsten', 'oxygen', 'mullite', 600, 'gas oxygen'],
    ['tungsten', 'argon', 'mullite', 1600, null],
    ['copper', 'nitrogen > oxygen', 'polyethylene', 200, null],
    ['copper', 'oxygen', 'polyethylene', 250, 'gas oxygen'],
    ['quartz glass', 'argon', 'fluorite', 800, 'specimen fluoride'],
    ['quartz glass', 'argon', 'gypsum', 800, null],
    ['gold', 'argon', 'silicon', 500, 'specimen silicon'],
    ['gold', 'argon', 'sodium chloride', 700, null],
    ['steel', 'nitrogen', 'azodicarbonamide', 300, null],
    ['steel', 'hydrogen', 'cellulose', 300, 'gas hydrogen'],
  ];
  for (const [crucible, gas, specimen, max, problem] of cases) {
    it(`${crucible}, ${gas}, ${specimen} to ${max} °C: ${problem ?? 'nothing'}`, () => {
      const problems = found(crucible, gas, specimen.replace(', ', ','), max);
      if (problem === null) assert.deepEqual(problems, []);
      else assert.ok(problems.includes(problem), problems.join('; '));
    });
  }

  it('a problem says why, from which temperature, and which materials would do', () => {
    const { problems } = compatibility('aluminium', uses('nitrogen'), ['zinc'], 450);
    const [problem] = problems;
    assert.equal(problem?.words, 'zinc');
    assert.equal(problem.above, 381);
    assert.match(problem.why, /alloys/);
    assert.ok(problem.instead.includes('alumina') && !problem.instead.includes('platinum'));
    for (const name of problem.instead) {
      assert.deepEqual(compatibility(name, uses('nitrogen'), ['zinc'], 450).problems, []);
      assert.equal(tooHot(name, uses('nitrogen'), 450), null);
    }
  });

  it('an alloy is taken at its own melting: the casting alloy attacks platinum below 660 °C', () => {
    const { problems } = compatibility('platinum', uses('argon'), ['aluminium alloy'], 520);
    assert.deepEqual(
      problems.map((p) => p.above),
      [500, 500],
    );
  });

  it('what is not known is reported as not assessed and never passed over, the rest is still compared', () => {
    const nothing = compatibility(null, [], [], 500);
    assert.deepEqual(
      nothing.notAssessed.map((n) => n.what),
      ['crucible', 'gas', 'specimen'],
    );
    const some = compatibility('graphite', uses('air > swamp gas'), ['grey powder', 'metal'], 700);
    assert.deepEqual(
      some.notAssessed.map((n) => `${n.what} ${n.words}`),
      ['gas swamp gas', 'specimen grey powder', 'specimen metal'],
    );
    assert.deepEqual(
      some.problems.map((p) => p.culprit),
      ['air'],
    );
    assert.deepEqual(compatibility('unobtainium', uses('air'), ['calcite'], 700).problems, []);
    assert.equal(compatibility('unobtainium', uses('air'), ['calcite'], 700).notAssessed.length, 1);
  });
});

describe('the working limit of a crucible', () => {
  it('depends on the gas: graphite 2000 °C in argon, 400 in air, and in what is not known', () => {
    assert.equal(workingLimit('graphite', 'argon'), 2000);
    assert.equal(workingLimit('graphite', 'air'), 400);
    assert.equal(workingLimit('graphite', 'swamp gas'), 400);
    assert.equal(workingLimit('graphite', null), 400);
    assert.equal(workingLimit('unobtainium', 'air'), null);
  });

  it('lies below the melting point of the material: Al 660, Au 1064, Cu 1085, Pt 1768, quartz glass softening 1600 °C', () => {
    // ITS-90 for Al, Au, Cu; Pt and the softening of silica: handbook values, from memory.
    const melting = { aluminium: 660, gold: 1064, copper: 1085, platinum: 1768, 'quartz glass': 1600, alumina: 2050 };
    for (const [material, point] of Object.entries(melting)) assert.ok(workingLimit(material, 'argon')! < point - 50);
  });

  it('aluminium to 620 °C and to 595 °C is too hot with 10 K of margin, to 590 °C it is not', () => {
    assert.equal(tooHot('aluminium', uses('nitrogen'), 590), null);
    const near = tooHot('aluminium', uses('nitrogen'), 595);
    assert.equal(near?.limit, 600);
    assert.ok(near.instead.includes('alumina') && !near.instead.includes('aluminium'));
    assert.equal(tooHot('aluminium', uses('nitrogen'), 620)?.reached, 620);
    assert.equal(tooHot('aluminium', uses('nitrogen'), 595, 0), null);
  });

  it('is judged in each gas by the temperature reached in it', () => {
    assert.equal(tooHot('tungsten', uses('argon > air@300'), 1500), null);
    assert.equal(tooHot('tungsten', uses('argon > air@500'), 1500)?.gas, 'air');
  });

  it('words about make and lid do not hide the material, other words do', () => {
    assert.equal(findCrucible('platinum pan')?.name, 'platinum');
    assert.equal(findCrucible('Sealed aluminum crucible')?.name, 'aluminium');
    assert.equal(findCrucible('high-pressure steel')?.name, 'steel');
    assert.equal(findCrucible('Al2O3')?.name, 'alumina');
    assert.equal(findCrucible('platinum rhodium')?.name, 'platinum rhodium');
    assert.equal(findCrucible('gold plated copper'), null);
    assert.equal(findCrucible('crucible'), null);
  });
});
