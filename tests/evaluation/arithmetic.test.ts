import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ratios } from '../reference/stoichiometryRatios';
import { seeded } from '../support/random';
import { needReference } from '../support/reference';
import { evaluateOn, resultOf, type Arrays } from './onArrays';

const ramp = Float64Array.from({ length: 200 }, (_, i) => i);
const columns: Arrays = [
  { signal: 'time', unit: 's', values: ramp.map((i) => 30 * i) },
  { signal: 'temperature', unit: '°C', values: ramp.map((i) => 30 + 5 * i) },
  { signal: 'mass', unit: 'mg', values: ramp.map(() => 20) },
];

const lets = (lines: string) => evaluateOn(columns, `run "a.csv"\n  mass 20 mg\n${lines}`, lines);

describe('arithmetic of a gloss', () => {
  it('54 stoichiometric mass changes as expressions agree with the table within 1e-4 % and their uncertainty within 20 %', function () {
    // tables/stoichiometry.csv of the reference folder: abridged IUPAC 2021 weights, Prohaska et al., Pure Appl. Chem. 94 (2022) 573.
    const table = readFileSync(join(needReference(this), '..', 'tables', 'stoichiometry.csv'), 'utf8');
    const rows = table
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.match(/("[^"]*"|[^,]*)(?:,|$)/g)!.map((f) => f.replace(/,$/, '')));
    assert.equal(rows.length, 54);
    const gloss = ratios.map(([part, whole], i) => `let r${i} = M(${part}) / M(${whole})\n  show %`).join('\n');
    const evaluated = lets(`${gloss}\n`);
    rows.forEach((row, i) => {
      const r = resultOf(evaluated, `r${i}`);
      assert.equal(r.unit.text, '%');
      assert.ok(Math.abs(r.value! - Number(row[5])) <= 1e-4, `${row[0]}, ${row[1]}: ${r.value}`);
      assert.ok(Math.abs(r.uncertainty! / Number(row[6]) - 1) <= 0.2, `${row[0]}, ${row[1]}: u ${r.uncertainty}`);
    });
  });

  it('a thermal expansion coefficient has the published value and uncertainty', () => {
    // NIST TN 1900 (2015), example E13: L0 = 1.4999 m, L1 = 1.5021 m, T0 = 288.15 K, T1 = 373.10 K, with standard
    // uncertainties 0.0001 m, 0.0002 m, 0.02 K, 0.05 K: 1.727e-5 /K, u = 1.8e-6 /K.
    const e = lets(
      'let L0 = 1.4999 ± 0.0001 m\nlet L1 = 1.5021 ± 0.0002 m\nlet dT = (373.10 ± 0.05 K) - (288.15 ± 0.02 K)\nlet a = (L1 - L0) / (L0 * dT)\n',
    );
    const a = resultOf(e, 'a');
    assert.ok(Math.abs(a.value! - 1.727e-5) < 5e-9, `${a.value}`);
    assert.ok(Math.abs(a.uncertainty! - 1.8e-6) < 0.06e-6, `${a.uncertainty}`);
  });

  it('a mass calibration has the first-order result of the guide', () => {
    // JCGM 101:2008, 9.3: 1.234 mg, first-order u = 0.0539 mg. Densities are rectangular: half-widths over √3.
    const e = lets(
      [
        'let mRc = 100000.000 ± 0.050 mg',
        'let d = 1.234 ± 0.020 mg',
        'let ra = 1.20 ± 0.0577350269 kg/m^3',
        'let rW = 8000 ± 577.350269 kg/m^3',
        'let rR = 8000 ± 28.8675135 kg/m^3',
        'let dm = (mRc + d) * (1 + (ra - 1.2 kg/m^3) * (1/rW - 1/rR)) - 100000 mg',
      ].join('\n') + '\n',
    );
    const dm = resultOf(e, 'dm');
    assert.ok(Math.abs(dm.value! - 1.234) < 1e-6, `${dm.value}`);
    assert.ok(Math.abs(dm.uncertainty! - 0.053852) < 1e-5, `${dm.uncertainty}`);
  });

  it('what appears twice is the same influence: x - x is exactly nothing', () => {
    const e = lets('let x = 5 ± 1 mg\nlet nothing = x - x\nlet twice = x + x\n');
    assert.equal(resultOf(e, 'nothing').uncertainty, 0);
    assert.equal(resultOf(e, 'twice').uncertainty, 2);
  });

  it('two literals written alike are two measurements, and do not cancel', () => {
    const e = lets('let d = (5 ± 1 mg) - (5 ± 1 mg)\nlet s = (5 ± 1 mg) + (5 ± 1 mg)\n');
    for (const name of ['d', 's']) assert.ok(Math.abs(resultOf(e, name).uncertainty! - Math.SQRT2) < 1e-12, name);
  });

  it('temperatures: a difference of points is in K, a point and a difference a point', () => {
    const e = lets('let a = 100 °C\nlet b = 80 °C\nlet d = a - b\nlet c = b + d\nlet k = absolute(a)\n');
    assert.deepEqual(
      ['d', 'c', 'k'].map((n) => [resultOf(e, n).value, resultOf(e, n).unit.text]),
      [
        [20, 'K'],
        [100, '°C'],
        [373.15, 'K'],
      ],
    );
  });

  it('verdicts by JCGM 106: met, not met, inconclusive, at U = 2u', () => {
    const e = lets(
      'let x = 10 ± 0.5 mg\nrequire x in 8..12 mg\nrequire x in 9.1..12 mg\nrequire x <= 8.9 mg\nrequire x >= 9 mg\nrequire x <= 9.01 mg\n',
    );
    assert.deepEqual(
      e.requirements.map((r) => r.verdict),
      ['met', 'inconclusive', 'not met', 'met', 'inconclusive'],
    );
  });

  it('a step below its detection limit is not detected, stays so in products, and decides only limits it cannot reach', () => {
    const sigma = 0.001;
    const random = seeded(7);
    const noisy: Arrays = [
      ...columns.slice(0, 2),
      { signal: 'mass', unit: 'mg', values: ramp.map(() => 20 + sigma * random.normal()) },
    ];
    const e = evaluateOn(
      noisy,
      [
        'run "a.csv"',
        '  mass 20 mg',
        'step None 200..800 °C',
        'let twice = 2 * None.loss',
        'let sum = None.loss + 1 %',
        'require None.loss <= 1 %',
        'require None.loss >= 1 %',
        'require None.loss <= 0.001 %',
        'require sum <= 2 %',
        '',
      ].join('\n'),
      'flat',
    );
    const none = resultOf(e, 'None.loss');
    assert.equal(none.state, 'not-detected');
    assert.equal(none.value, null);
    // x = 5σ√2 (language.md 4) in % of 20 mg, σ from the data.
    const x = (100 * 5 * sigma * Math.SQRT2) / 20;
    assert.ok(Math.abs(none.limit! / x - 1) < 0.25, `${none.limit} for ${x}`);
    assert.equal(resultOf(e, 'twice').state, 'not-detected');
    assert.ok(Math.abs(resultOf(e, 'twice').limit! / none.limit! - 2) < 1e-12);
    const sum = resultOf(e, 'sum');
    assert.equal(sum.state, 'apparent');
    // Uniform on 0..x: its middle, and a standard uncertainty of x/√12.
    assert.ok(Math.abs(sum.value! - (1 + none.limit! / 2)) < 1e-12);
    assert.ok(Math.abs(sum.uncertainty! - none.limit! / Math.sqrt(12)) < 1e-12);
    assert.deepEqual(
      e.requirements.map((r) => r.verdict),
      ['met', 'not met', 'inconclusive', 'inconclusive'],
    );
    assert.equal(resultOf(e, 'None.start').state, 'failed');
  });
});
