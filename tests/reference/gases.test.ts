import assert from 'node:assert/strict';
import { molarMass } from '../../server/src/quantities/molarMass';
import { atomicWeights } from '../../server/src/reference/atomicWeights';
import { findGas, gases } from '../../server/src/reference/gases';
import { near, nearRelative } from '../quantities/near';

describe('the table of gases', () => {
  it('is found by name, other name and formula, and not by guessing', () => {
    assert.equal(findGas('nitrogen')?.name, 'nitrogen');
    assert.equal(findGas('Synthetic  Air')?.name, 'air');
    assert.equal(findGas('synthetic-air')?.name, 'air');
    assert.equal(findGas('CO2')?.name, 'carbon dioxide');
    assert.equal(findGas('CO')?.name, 'carbon monoxide');
    assert.equal(findGas('co')?.name, undefined);
    assert.equal(findGas('nitrogen from the wall'), null);
  });

  it('molar masses are those of the formulas', () => {
    for (const gas of gases) {
      const formula = gas.formulas[0];
      if (formula === undefined || gas.molarMass === null) continue;
      const read = molarMass(formula, atomicWeights);
      assert.ok(read.ok, formula);
      near(gas.molarMass, read.value.value.value, 0.0015, gas.name);
    }
  });

  it('densities at 25 °C lie within 1.5 % of the ideal gas, which holds for all of them', () => {
    // 24.465 L/mol at 298.15 K and 101.325 kPa (CODATA molar gas constant).
    for (const gas of gases) {
      if (gas.density === null || gas.molarMass === null) continue;
      nearRelative(gas.density, gas.molarMass / 24.465, 0.015, gas.name);
    }
  });

  it('the six purge gases have the densities of their equations of state within 0.1 %', () => {
    // Rounded values of common tables at 25 °C and 1 atm, kg/m³: CRC Handbook, fluid properties (from memory).
    const rounded = {
      nitrogen: 1.145,
      argon: 1.634,
      air: 1.184,
      oxygen: 1.309,
      helium: 0.1635,
      'carbon dioxide': 1.808,
    };
    for (const [name, density] of Object.entries(rounded)) nearRelative(findGas(name)?.density ?? NaN, density, 0.001);
  });

  it('buoyancy of 0.1 cm³ in nitrogen from 25 to 1000 °C is 0.0877 mg by these densities', () => {
    // V·ρ·(1 - T0/T), worked by hand with ρ = 1.14524 kg/m³.
    near(0.1 * (findGas('nitrogen')?.density ?? NaN) * (1 - 298.15 / 1273.15), 0.0877, 0.00005);
  });

  it('flags: hydrogen burns and reduces, carbon monoxide is poisonous, carbon dioxide and argon are neither', () => {
    const traits = (name: string): readonly string[] => findGas(name)?.traits ?? [];
    assert.ok(traits('hydrogen').includes('flammable') && traits('hydrogen').includes('reducing'));
    assert.ok(traits('carbon monoxide').includes('toxic') && traits('carbon monoxide').includes('flammable'));
    for (const harmless of ['argon', 'carbon dioxide', 'nitrogen', 'air', 'helium']) {
      assert.ok(!traits(harmless).some((t) => ['flammable', 'toxic', 'corrosive'].includes(t)), harmless);
    }
  });
});
