import assert from 'node:assert/strict';
import fc from 'fast-check';
import { molarMass } from '../../server/src/quantities/molarMass';
import { atomicWeights } from '../../server/src/reference/atomicWeights';
import { near } from './near';

function mass(formula: string): number {
  const read = molarMass(formula, atomicWeights);
  assert.ok(read.ok, `${formula}: ${read.ok ? '' : read.failure.message}`);
  return read.value.value.value;
}

function counts(formula: string): Record<string, number> {
  const read = molarMass(formula, atomicWeights);
  assert.ok(read.ok, formula);
  return Object.fromEntries(read.value.elements.map(({ symbol, count }) => [symbol, count]));
}

describe('a formula', () => {
  // Molar masses summed by hand from the IUPAC 2021 abridged weights.
  const masses: readonly (readonly [string, number])[] = [
    ['H2O', 18.015],
    ['CaCO3', 100.086],
    ['CaMg(CO3)2', 184.399],
    ['CaSO4.2H2O', 172.164],
    ['CaSO4·2H2O', 172.164],
    ['CaSO4*2H2O', 172.164],
    ['CaSO4 · 2 H2O', 172.164],
    ['CaSO₄·2H₂O', 172.164],
    ['CuSO4.5H2O', 249.677],
    ['CaSO4.0.5H2O', 145.1415],
    ['CaSO4.1.5H2O', 163.1565],
    ['KAl(SO4)2.12H2O', 474.372],
    ['Fe0.95O', 69.05175],
    ['Al2Si2O5(OH)4', 258.157],
    ['(NH4)2[Fe(SO4)2].6H2O', 392.125],
    ['Ca10(PO4)6(OH)2', 1004.614],
    ['0.5O2', 15.999],
    ['C', 12.011],
    ['Co', 58.933],
    ['CO', 28.01],
  ];
  for (const [formula, expected] of masses) {
    it(`${formula} has ${expected} g/mol`, () => near(mass(formula), expected, 1e-9));
  }

  it('a dot belongs to a subscript only after a lone zero', () => {
    assert.deepEqual(counts('Fe0.95O'), { Fe: 0.95, O: 1 });
    assert.deepEqual(counts('CaSO4.2H2O'), { Ca: 1, H: 4, O: 6, S: 1 });
    assert.deepEqual(counts('CaSO4.0.5H2O'), { Ca: 1, H: 1, O: 4.5, S: 1 });
    assert.deepEqual(counts('Fe0.95O.2H2O'), { Fe: 0.95, H: 4, O: 3 });
    assert.deepEqual(counts('C10.5H2O'), { C: 10, H: 10, O: 5 });
  });

  it('brackets nest and coefficients hold for their whole part', () => {
    assert.deepEqual(counts('[Co(NH3)6]Cl3'), { Cl: 3, Co: 1, H: 18, N: 6 });
    assert.deepEqual(counts('3CaO·Al2O3·6H2O'), { Al: 2, Ca: 3, H: 12, O: 12 });
    assert.deepEqual(counts('(CaSO4)2.H2O'), { Ca: 2, H: 2, O: 9, S: 2 });
  });

  const failures: readonly (readonly [formula: string, reason: string, offset: number, length: number])[] = [
    ['', 'empty', 0, 0],
    ['Xy2', 'unknown-element', 0, 2],
    ['caco3', 'unknown-element', 0, 1],
    ['HCL', 'group-name', 2, 1],
    ['MeOH', 'group-name', 0, 2],
    ['PhCOOH', 'group-name', 0, 2],
    ['C2H5OEt', 'group-name', 5, 2],
    ['D2O', 'isotope', 0, 1],
    ['HTO', 'isotope', 1, 1],
    ['13C', 'isotope', 0, 3],
    ['[13C]O2', 'isotope', 1, 3],
    ['^13CO2', 'isotope', 0, 3],
    ['¹³CO2', 'isotope', 0, 2],
    ['18O2', 'isotope', 0, 3],
    ['Ca2+', 'charge', 3, 1],
    ['SO4^2-', 'charge', 3, 1],
    ['SO4²⁻', 'charge', 3, 1],
    ['OH-', 'charge', 2, 1],
    ['Tc2O7', 'no-weight', 0, 2],
    ['CaMg(CO3', 'bracket', 4, 1],
    ['CaMg(CO3]2', 'bracket', 8, 1],
    ['CaCO3)', 'bracket', 5, 1],
    ['Ca()', 'bracket', 3, 1],
    ['CaSO4.', 'text', 6, 0],
    ['CaSO4..2H2O', 'text', 6, 1],
    ['Ca0', 'subscript', 2, 1],
    ['Ca01', 'subscript', 2, 2],
    ['0H2O', 'subscript', 0, 1],
    ['Fe2.85', 'text', 6, 0],
    ['Ca O', 'text', 2, 1],
    ['CaCO3,', 'text', 5, 1],
    ['Phe', 'unknown-element', 0, 3],
  ];
  for (const [formula, reason, offset, length] of failures) {
    it(`"${formula}" fails: ${reason} at ${offset}`, () => {
      const read = molarMass(formula, atomicWeights);
      assert.ok(!read.ok);
      assert.deepEqual([read.failure.reason, read.failure.offset, read.failure.length], [reason, offset, length]);
      assert.ok(read.failure.message.length > 0);
    });
  }

  it('2H2O is two waters and not an isotope, 12H2O and 3Fe2O3 likewise', () => {
    near(mass('2H2O'), 36.03, 1e-9);
    near(mass('12H2O'), 216.18, 1e-9);
    near(mass('3Fe2O3'), 3 * 159.687, 1e-9);
  });

  it('the order of the parts does not change the mass, bit for bit', () => {
    const parts = ['CaSO4', '2H2O', '0.3MgO', 'Al2O3'];
    fc.assert(
      fc.property(fc.shuffledSubarray(parts, { minLength: 4 }), (shuffled) => {
        assert.deepEqual(molarMass(shuffled.join('·'), atomicWeights), molarMass(parts.join('.'), atomicWeights));
      }),
      { seed: 101, numRuns: 24 },
    );
  });

  it('whatever the text, reading it never throws and failures lie inside it', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'CaOH2()[].·*0135+-^²₂ MeD') }), (text) => {
        const read = molarMass(text, atomicWeights);
        if (!read.ok) assert.ok(read.failure.offset + read.failure.length <= text.length);
      }),
      { seed: 102, numRuns: 2000 },
    );
    assert.ok(!molarMass('('.repeat(10_000), atomicWeights).ok);
    assert.ok(!molarMass(`C${'9'.repeat(400)}`, atomicWeights).ok);
  });
});
