import assert from 'node:assert/strict';
import { kindOf } from '../../server/src/quantities/convert';
import { dimensions } from '../../server/src/quantities/dimension';
import { parseUnit } from '../../server/src/quantities/parseUnit';
import type { Unit } from '../../server/src/quantities/unit';
import { nearRelative } from './near';

function unit(text: string): Unit {
  const parsed = parseUnit(text);
  assert.ok(parsed.ok, `${text} is a unit`);
  return parsed.value;
}

describe('a unit is read by the grammar', () => {
  // Factors: SI Brochure, 9th edition (2019), tables 4, 7 and 8; bar and litre: table 8 and its notes.
  const worth: readonly (readonly [string, number, readonly number[]])[] = [
    ['mg', 1e-6, dimensions.mass],
    ['kg', 1, dimensions.mass],
    ['µg', 1e-9, dimensions.mass],
    ['Mg', 1e3, dimensions.mass],
    ['min', 60, dimensions.time],
    ['h', 3600, dimensions.time],
    ['ms', 1e-3, dimensions.time],
    ['mm', 1e-3, dimensions.length],
    ['cm^3', 1e-6, dimensions.volume],
    ['mL', 1e-6, dimensions.volume],
    ['mL/min', 1e-6 / 60, dimensions.volumeFlow],
    ['mbar', 100, dimensions.pressure],
    ['MPa', 1e6, dimensions.pressure],
    ['mol', 1, dimensions.amount],
    ['mmol', 1e-3, dimensions.amount],
    ['g/mol', 1e-3, dimensions.molarMass],
    ['kJ/mol', 1e3, dimensions.molarEnergy],
    ['J/g', 1e3, dimensions.specificEnergy],
    ['mW/mg', 1e3, dimensions.specificPower],
    ['J/(g·K)', 1e3, dimensions.specificHeat],
    ['K/min', 1 / 60, dimensions.heatingRate],
    ['1/min', 1 / 60, dimensions.frequency],
    ['%/min', 0.01 / 60, dimensions.frequency],
    ['ppm', 1e-6, dimensions.none],
    ['µV·s', 1e-6, [2, 1, -2, 0, -1, 0]],
    ['K^-1', 1, dimensions.perKelvin],
    ['mg/cm³', 1, dimensions.density],
  ];
  for (const [text, factor, dimension] of worth) {
    it(`${text} is ${factor} of its SI unit`, () => {
      const read = unit(text);
      nearRelative(read.factor, factor, 1e-15);
      assert.deepEqual([...read.dimension], [...dimension]);
      assert.equal(read.offset, 0);
    });
  }

  const spelled: readonly (readonly [string, string])[] = [
    ['degC', '°C'],
    ['C', '°C'],
    ['\u2103', '°C'],
    ['\u212a', 'K'],
    ['uV', 'µV'],
    ['\u03bcg', 'µg'],
    ['J/(g*K)', 'J/(g·K)'],
    ['J/(g·\u2103)', 'J/(g·K)'],
    ['°C/min', 'K/min'],
    ['1/degC', '1/K'],
    ['K^2', 'K²'],
    ['cm^-3', 'cm⁻³'],
    ['cm⁻³', 'cm⁻³'],
    ['J/(g)', 'J/g'],
  ];
  for (const [text, normal] of spelled) {
    it(`${text} has the normal spelling ${normal}`, () => assert.equal(unit(text).text, normal));
  }

  it('prefixes do not swallow symbols: min, mol, Pa, h, cd stay what they are', () => {
    assert.deepEqual([...unit('min').dimension], [...dimensions.time]);
    assert.equal(unit('mol').text, 'mol');
    assert.deepEqual([...unit('Pa').dimension], [...dimensions.pressure]);
    assert.ok(!parseUnit('cd').ok);
    assert.ok(!parseUnit('mmin').ok, 'the minute takes no prefix');
    assert.ok(!parseUnit('m%').ok);
  });

  it('°C is a point only where it stands alone', () => {
    assert.equal(unit('°C').offset, 273.15);
    assert.equal(kindOf(unit('°C')), 'temperature');
    assert.equal(unit('°C^2').offset, 0);
    assert.equal(kindOf(unit('K')), 'quantity');
    assert.equal(kindOf(unit('%')), 'fraction');
    assert.equal(kindOf(unit('ppm')), 'fraction');
    assert.equal(kindOf(unit('mg/mg')), 'number');
    assert.equal(kindOf(null), 'number');
  });

  const wrong: readonly (readonly [text: string, reason: string, offset: number, suggestion: string | null])[] = [
    ['', 'empty', 0, null],
    ['J/g/K', 'second-slash', 3, 'J/(g·K)'],
    ['J/(g·K)/min', 'second-slash', 7, 'J/(g·K·min)'],
    ['mW / mg', 'blank', 2, 'mW/mg'],
    ['J*g', 'star', 1, 'J·g'],
    ['foo', 'unknown-symbol', 0, null],
    ['mg/foo', 'unknown-symbol', 3, null],
    ['J/(g·foo)', 'unknown-symbol', 5, null],
    ['sec', 'unknown-symbol', 0, 's'],
    ['ml', 'unknown-symbol', 0, 'mL'],
    ['m2', 'unknown-symbol', 0, 'm^2'],
    ['kcal', 'unknown-symbol', 0, null],
    ['K^0', 'exponent', 1, null],
    ['km^200', 'exponent', 2, null],
    ['mg)', 'text-left', 2, null],
    ['constructor', 'unknown-symbol', 0, null],
    ['1', 'unknown-symbol', 0, null],
  ];
  for (const [text, reason, offset, suggestion] of wrong) {
    it(`"${text}" fails: ${reason} at ${offset}`, () => {
      const parsed = parseUnit(text);
      assert.ok(!parsed.ok);
      const failure = parsed.failure;
      assert.deepEqual([failure.reason, failure.offset, failure.suggestion], [reason, offset, suggestion]);
      assert.ok(failure.message.length > 0);
    });
  }

  it('1 is the unit of a plain number only where it is asked for', () => {
    const one = parseUnit('1', 'with 1');
    assert.ok(one.ok);
    assert.equal(one.value.factor, 1);
    assert.ok(!parseUnit('1').ok);
  });
});
