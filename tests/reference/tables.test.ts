import assert from 'node:assert/strict';
import { molarMass } from '../../server/src/quantities/molarMass';
import { atomicWeights } from '../../server/src/reference/atomicWeights';
import { allCrucibleRules } from '../../server/src/reference/crucibleRules';
import { crucibles } from '../../server/src/reference/crucibles';
import { gases } from '../../server/src/reference/gases';
import { volatileMetals } from '../../server/src/reference/metalVapour';
import { polymerFusion } from '../../server/src/reference/polymerFusion';
import { products } from '../../server/src/reference/products';
import { referenceEnthalpies } from '../../server/src/reference/referenceEnthalpies';
import { findSpecimen, specimens } from '../../server/src/reference/specimens';
import { near } from '../quantities/near';

describe('the reference tables', () => {
  it('name a source in every row', () => {
    const tables = {
      crucibles,
      allCrucibleRules,
      gases,
      volatileMetals,
      polymerFusion,
      referenceEnthalpies,
      specimens,
    };
    for (const [name, rows] of Object.entries({ ...tables, products: [...products.values()] })) {
      assert.ok(rows.length > 0);
      for (const row of rows) assert.ok(row.source.length > 5, `${name}: ${JSON.stringify(row)}`);
    }
  });

  it('refer only to rows that exist: products, metals, crucibles, traits of gases and specimens', () => {
    const metals = new Set(specimens.flatMap((s) => s.metals));
    const traits = new Set<string>(specimens.flatMap((s) => s.traits));
    const gasTraits = new Set<string>(gases.flatMap((g) => g.traits));
    for (const specimen of specimens) {
      for (const name of specimen.products) assert.ok(products.has(name), `${specimen.name}: ${name}`);
      for (const metal of specimen.metals) assert.ok(findSpecimen(metal) !== null, metal);
    }
    for (const rule of allCrucibleRules) {
      assert.ok(
        crucibles.some((c) => c.name === rule.crucible),
        rule.crucible,
      );
      const known = { gas: gasTraits, specimen: traits, metal: metals }[rule.against];
      for (const what of rule.what) assert.ok(known.has(what), `${rule.crucible}: ${what}`);
      for (const gas of rule.inGas) assert.ok(gasTraits.has(gas), gas);
      assert.ok(rule.beside === null || traits.has(rule.beside));
    }
    for (const product of products.values()) {
      assert.ok(product.gas === null || gases.some((g) => g.name === product.gas), product.name);
    }
    for (const { metal } of volatileMetals) assert.ok(metals.has(metal), metal);
    for (const { polymer } of polymerFusion) assert.ok(findSpecimen(polymer) !== null, polymer);
    for (const { substance } of referenceEnthalpies) assert.ok(findSpecimen(substance) !== null, substance);
  });

  it('hold only formulas that can be read', () => {
    for (const { formulas } of specimens) {
      for (const formula of formulas) assert.ok(molarMass(formula, atomicWeights).ok, formula);
    }
  });

  it('melting points of the fixed points are those of ITS-90 (Preston-Thomas, Metrologia 27 (1990) 3) within 0.1 K', () => {
    const its90 = {
      Hg: -38.8344,
      Ga: 29.7646,
      In: 156.5985,
      Sn: 231.928,
      Zn: 419.527,
      Al: 660.323,
      Ag: 961.78,
      Au: 1064.18,
      Cu: 1084.62,
    };
    for (const [symbol, expected] of Object.entries(its90))
      near(findSpecimen(symbol)?.melts ?? NaN, expected, 0.1, symbol);
  });

  it('1 Pa temperatures follow the vapour pressure equations of Alcock et al. within 10 K', () => {
    // log10(p/atm) = A - B/T of the solid or liquid, Can. Metall. Q. 23 (1984) 309, coefficients from memory.
    const equations = {
      zinc: [6.102, 6776],
      cadmium: [5.939, 5799],
      lead: [4.911, 9701],
      sodium: [4.704, 5377],
      potassium: [4.402, 4453],
      mercury: [5.116, 3190],
    };
    for (const [metal, [a, b]] of Object.entries(equations)) {
      const kelvin = b! / (a! + Math.log10(101325));
      near(volatileMetals.find((m) => m.metal === metal)?.onePascal ?? NaN, kelvin - 273.15, 10, metal);
    }
  });

  it('heats of fusion of perfect crystals are molar values over the molar mass of the repeat unit', () => {
    // kJ/mol, Wunderlich and ATHAS, from memory.
    const molar = {
      polyethylene: [4.11, 'CH2'],
      polypropylene: [8.7, 'C3H6'],
      'polyethylene terephthalate': [26.9, 'C10H8O4'],
      'polyamide 6': [26.0, 'C6H11NO'],
      'polyamide 66': [57.8, 'C12H22N2O2'],
      polytetrafluoroethylene: [4.1, 'CF2'],
      polyoxymethylene: [9.79, 'CH2O'],
      'polybutylene terephthalate': [32.0, 'C12H12O4'],
    } as const;
    for (const [polymer, [kilojoule, unit]] of Object.entries(molar)) {
      const read = molarMass(unit, atomicWeights);
      assert.ok(read.ok);
      const expected = (1000 * kilojoule) / read.value.value.value;
      near(polymerFusion.find((p) => p.polymer === polymer)?.enthalpy ?? NaN, expected, 0.1, polymer);
    }
  });

  it('indium, gallium and bismuth have traceable heats of fusion with a coverage, and other sources agree within 1.5 %', () => {
    for (const [substance, value] of [
      ['indium', 28.6624],
      ['gallium', 80.097],
      ['bismuth', 53.146],
    ] as const) {
      const rows = referenceEnthalpies.filter((row) => row.substance === substance && row.transition === 'fusion');
      const traceable = rows.find((row) => row.tag === 'read' && row.coverage === '95 %');
      assert.equal(traceable?.value, value);
      for (const row of rows) near(row.value, value, 0.015 * value, `${substance}, ${row.source}`);
    }
  });

  it('molar and specific heats agree: 3.291 kJ/mol of indium is 28.66 J/g, 6.01 kJ/mol of water 333.6 J/g (CRC Handbook)', () => {
    for (const [formula, substance, joule] of [
      ['In', 'indium', 3291],
      ['H2O', 'water', 6010],
      ['Sn', 'tin', 7150],
      ['Pb', 'lead', 4774],
    ] as const) {
      const read = molarMass(formula, atomicWeights);
      assert.ok(read.ok);
      const row = referenceEnthalpies.find((r) => r.substance === substance && r.source.startsWith('CRC'));
      near(row?.value ?? NaN, joule / read.value.value.value, (0.0005 * joule) / 100 + 0.03, substance);
    }
  });

  it('words are found whatever their case, hyphens, plural or formula, and unknown ones are not', () => {
    assert.equal(findSpecimen('PVC')?.name, 'polyvinyl chloride');
    assert.equal(findSpecimen('Poly(methyl methacrylate)')?.name, 'pmma');
    assert.equal(findSpecimen('CaSO4 · 2 H2O')?.name, 'gypsum');
    assert.equal(findSpecimen('carbon-black')?.name, 'carbon black');
    assert.equal(findSpecimen('zeolites')?.name, 'zeolite');
    assert.equal(findSpecimen('Co')?.name, 'cobalt');
    for (const unknown of ['grey powder', 'CO', '', 'calcite and something']) assert.equal(findSpecimen(unknown), null);
  });
});
