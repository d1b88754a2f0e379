import assert from 'node:assert/strict';
import { dirname, basename, join } from 'node:path';
import { Engine } from '../../server/src/engine/engine';
import { draftGloss } from '../../server/src/engine/draft';
import type { Snapshot } from '../../server/src/engine/snapshot';
import { NodeHost } from '../../server/src/host/nodeHost';
import { format } from '../../server/src/language/format';
import { needOpenData } from '../support/reference';
import { laboratories } from './pmmaRuns';

describe('measured runs of one PMMA in thirteen laboratories', function () {
  this.timeout(120_000);
  let folder = '';
  let host: NodeHost;
  before(function () {
    folder = join(needOpenData(this), 'macfp-pmma');
    host = new NodeHost(folder);
  });

  const evaluate = (file: string, gloss: string): Promise<Snapshot> => {
    const path = join(folder, dirname(file), 'test.gloss');
    return new Engine(host).evaluate(path, gloss.replace('FILE', basename(file)));
  };
  const value = (s: Snapshot, id: string): number => s.results.find((r) => r.id === id)?.value ?? NaN;

  it('rate maximum, 10 % onset and peak rate agree with the published figures at default settings', async () => {
    // From 50 °C (the first minutes are transients of gas and balance) to the end of the shortest record.
    const whole = 'run "FILE"\nstep Main 50..470 °C\ncrossing Onset rate = 10 % of maximum 50..470 °C\n';
    const failures: string[] = [];
    for (const lab of laboratories) {
      const found = { maximum: 0, onset: 0, rate: 0, spacing: 0 };
      for (const file of lab.files) {
        const s = await evaluate(file, whole);
        const run = s.run!;
        found.maximum += (value(s, 'Main.inflection') + 273.15) / lab.files.length;
        found.onset += (value(s, 'Onset.temperature') + 273.15) / lab.files.length;
        found.rate += value(s, 'Main.rate') / 6000 / lab.files.length;
        const heating = run.segments.find((g) => g.direction === 'heating')!;
        found.spacing = Math.max(found.spacing, (heating.to - heating.from) / (heating.last - heating.first));
      }
      const kelvin = (published: readonly [number, number | null]) => Math.max(published[1] ?? 0, 3, found.spacing);
      const report = (what: string, got: number, want: number, allowed: number) => {
        if (!(Math.abs(got - want) <= allowed)) failures.push(`${lab.city}: ${what}`);
      };
      report('maximum', found.maximum, lab.maximum[0], kelvin(lab.maximum));
      report('onset', found.onset, lab.onset[0], kelvin(lab.onset));
      report('peak rate', found.rate, lab.peakRate[0], Math.max(lab.peakRate[1] ?? 0, 0.04 * lab.peakRate[0]));
    }
    // Ten laboratories agree in all three figures. Two rows miss one each, by 4.3 % (bound 4 %) and by 3.3 K (bound 3 K).
    assert.deepEqual(failures, ['Shawinigan, 5 K/min: onset', 'Sherbrooke: peak rate']);
  });

  it('the extrapolated onset lies more than 15 K above the 10 % crossing, so the definitions cannot be swapped', async () => {
    for (const file of ['UMET/UMET_TGA_N2_10K_1.csv', 'UQ/UQ_TGA_N2_10K_1.csv', 'UDRI/UDRI_TGA_N2_10K_1.csv']) {
      const s = await evaluate(file, 'run "FILE"\nstep Main 160..450 °C\ncrossing Onset rate = 10 % of maximum\n');
      const apart = value(s, 'Main.start') - value(s, 'Onset.temperature');
      assert.ok(apart > 15, `${file}: ${apart} K`);
    }
  });

  it('a file labelled 10 K/min that ran near 20 is named with both rates', async () => {
    const s = await evaluate(
      'LCPP/LCPP_TGA_N2_10K_1.csv',
      'run "FILE"\nprogramme\n  hold 5 min\n  heat 300 K to 800 K at 10 K/min\n  hold 5 min\nstep Main 160..450 °C\n',
    );
    const finding = s.findings.find((f) => f.code === 'programme-mismatch' && f.message.includes('K/min'));
    assert.ok(finding !== undefined, s.findings.map((f) => f.code).join(', '));
    assert.match(finding.message, /\b10 K\/min/);
    assert.match(finding.message, /\b(19\.\d+|20(\.\d+)?) K\/min/);
  });

  it('eight runs with reasonable glosses give no error and at most two warnings each', async () => {
    const counts: string[] = [];
    for (const [file, rest] of reasonable) {
      const s = await evaluate(file, `run "FILE"\n${rest}`);
      const standing = s.findings.filter((f) => f.allowed === null);
      const errors = standing.filter((f) => f.severity === 'error').map((f) => f.code);
      const warnings = standing.filter((f) => f.severity === 'warning').map((f) => f.code);
      if (process.env.GLOSS_SHOW_FINDINGS !== undefined)
        console.log(
          file,
          errors,
          standing.filter((f) => f.severity === 'warning').map((f) => f.message),
        );
      if (errors.length > 0 || warnings.length > 2)
        counts.push(`${file}: ${errors.join(', ')}; ${warnings.join(', ')}`);
    }
    assert.deepEqual(counts, []);
  });

  it('drafts of eight runs propose the main loss, nothing in the last 100 K, no error, and are formatted', async () => {
    for (const file of drafted) {
      const draft = await draftGloss(host, join(folder, file));
      assert.ok(draft.ok, file);
      const { text } = draft.value;
      assert.equal(format(text), text, file);
      const s = await evaluate(file, text);
      assert.deepEqual(
        s.findings.filter((f) => f.severity === 'error').map((f) => `${f.code}: ${f.message}`),
        [],
        file,
      );
      const heating = s.run!.segments.find((g) => g.direction === 'heating')!;
      const losses = s.results.filter((r) => r.quantity === 'loss' && r.value !== null);
      const main = losses.find((r) => r.value! > 85);
      assert.ok(main !== undefined, `${file}: ${losses.map((r) => `${r.id} ${r.value}`).join(', ')}`);
      for (const r of losses)
        assert.ok(r.window!.from < heating.to - 100, `${file}: ${r.id} begins at ${r.window!.from} °C`);
    }
  });
});

// Conditions and masses as the laboratories state them.
const powder =
  '  crucible alumina 85 µL, no lid\n  contains polymethyl methacrylate\n  hazard "monomer vapour, extraction running"\n';
const reasonable: readonly (readonly [string, string])[] = [
  ['UMET/UMET_TGA_N2_10K_1.csv', `${powder}  mass 5.339 mg\n  atmosphere nitrogen 40 mL/min\nstep Main 150..445 °C\n`],
  ['UMET/UMET_TGA_N2_5K_1.csv', `${powder}  mass 4.093 mg\n  atmosphere nitrogen 40 mL/min\nstep Main 150..440 °C\n`],
  ['UQ/UQ_TGA_N2_10K_1.csv', `${powder}  mass 5.3 mg\n  atmosphere nitrogen 150 mL/min\nstep Main 150..455 °C\n`],
  ['UQ/UQ_TGA_N2_10K_2.csv', `${powder}  mass 5.1 mg\n  atmosphere nitrogen 150 mL/min\nstep Main 150..455 °C\n`],
  ['LCPP/LCPP_TGA_N2_5K_1.csv', `${powder}  mass 3.09388 mg\n  atmosphere nitrogen 80 mL/min\nstep Main 140..450 °C\n`],
  [
    'LCPP/LCPP_TGA_N2_20K_1.csv',
    `${powder}  mass 3.01186 mg\n  atmosphere nitrogen 80 mL/min\nstep Main 140..460 °C\n`,
  ],
  ['UDRI/UDRI_TGA_N2_10K_1.csv', `${powder}  mass 7.157 mg\n  atmosphere nitrogen\nstep Main 121..450 °C\n`],
  ['NIST/NIST_TGA_N2_10K_2.csv', `${powder}  mass 5.863 mg\n  atmosphere nitrogen 50 mL/min\nstep Main 150..480 °C\n`],
];

const drafted = [
  'UMET/UMET_TGA_N2_10K_1.csv',
  'UMET/UMET_TGA_N2_20K_1.csv',
  'UQ/UQ_TGA_N2_10K_1.csv',
  'LCPP/LCPP_TGA_N2_5K_1.csv',
  'UDRI/UDRI_TGA_N2_10K_1.csv',
  'NIST/NIST_TGA_N2_10K_2.csv',
  'DBI_Lund/DBI_Lund_TGA_N2_20K_1.csv',
  'Sandia/Sandia_TGA_Ar_10K_2.csv',
];
