import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { divide, scale } from '../../server/src/quantities/arithmetic';
import { molarMass } from '../../server/src/quantities/molarMass';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { atomicWeights } from '../../server/src/reference/atomicWeights';
import { openDataFolder } from '../support/reference';
import { skip } from '../support/skip';
import { near } from '../quantities/near';
import { ratios } from './stoichiometryRatios';

function percent(part: string, whole: string): Uncertain {
  const [a, b] = [part, whole].map((formula) => {
    const read = molarMass(formula, atomicWeights);
    assert.ok(read.ok, formula);
    return read.value.value;
  });
  return scale(divide(a!, b!), 100);
}

describe('mass changes by stoichiometry', () => {
  // Worked by hand from the abridged IUPAC 2021 weights, as quoted in textbooks for these reference substances.
  const published: readonly (readonly [part: string, whole: string, percent: number])[] = [
    ['H2O', 'CaC2O4.H2O', 12.3297],
    ['CO', 'CaC2O4.H2O', 19.1704],
    ['CO2', 'CaC2O4.H2O', 30.1203],
    ['CO2', 'CaCO3', 43.9712],
    ['2CO2', 'CaMg(CO3)2', 47.7324],
    ['5H2O', 'CuSO4.5H2O', 36.0766],
    ['2H2O', 'CaSO4.2H2O', 20.9277],
    ['2H2O', 'Al2Si2O5(OH)4', 13.9566],
    ['3O', 'Fe2', 42.9734],
    ['O', 'Ni', 27.2588],
  ];
  for (const [part, whole, expected] of published) {
    it(`${part} is ${expected} % of ${whole}`, () => near(percent(part, whole).value, expected, 1e-4));
  }

  it('elements that stand above and below correlate: CO2 in CaCO3 is known to 0.0013 %, not to the 0.0021 % of unrelated weights', () => {
    const ratio = percent('CO2', 'CaCO3');
    near(standardUncertainty(ratio), 0.0013, 0.2 * 0.0013);
    // The same ratio with the elements of the denominator renamed, so that nothing is shared.
    const [gas, solid] = ['CO2', 'CaCO3'].map((formula) => {
      const read = molarMass(formula, atomicWeights);
      assert.ok(read.ok);
      return read.value.value;
    });
    const renamed = { ...solid!, parts: solid!.parts.map((p) => ({ ...p, input: `${p.input} of the solid` })) };
    near(100 * standardUncertainty(divide(gas!, renamed)), 0.0021, 0.00005);
  });

  describe('the table of 54 mass changes, made by another program', () => {
    let rows: readonly string[][] = [];
    before(function () {
      const data = openDataFolder();
      const path = data === null ? '' : join(data, '..', 'reference', 'tables', 'stoichiometry.csv');
      if (data === null || !existsSync(path)) skip(this, 'GLOSS_OPEN_DATA names no folder with the data');
      rows = readFileSync(path, 'utf8').trim().split('\n').slice(1).map(cells);
    });

    it('holds a row for each of the 54 expressions', () => assert.equal(rows.length, ratios.length));

    for (const [i, [part, whole]] of ratios.entries()) {
      it(`row ${i + 1}: ${part} over ${whole} within 1e-4 points, uncertainty within 20 %`, () => {
        const row = rows[i]!;
        const ratio = percent(part, whole);
        near(ratio.value, Number(row[5]), 1e-4, row[0]);
        near(standardUncertainty(ratio), Number(row[6]), 0.2 * Number(row[6]), row[0]);
      });
    }
  });
});

/** Cells of one line; quotes hold commas, none are escaped in this table. */
function cells(line: string): string[] {
  return [...line.matchAll(/("([^"]*)"|[^,]*)(?:,|$)/g)].map((m) => m[2] ?? m[1]!);
}
