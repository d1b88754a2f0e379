import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { parse } from 'csv-parse/sync';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun, truth } from './smallRun';

interface Line {
  gloss: string;
  inputs: { role: string; path: string; identity: string }[];
  run: { points: number; identity: string; segments: { name: string; rate: number | null }[] } | null;
  results: {
    file: string | null;
    id: string;
    state: string;
    value: number | null;
    uncertainty: number | null;
    k: number;
    line: number;
  }[];
  requirements: { name: string | null; verdict: string; low: number | null; high: number | null }[];
  findings: { code: string; severity: string }[];
}

const validate = new Ajv().compile(
  JSON.parse(readFileSync('server/src/presentation/results.schema.json', 'utf8')) as object,
);

function lines(out: string): Line[] {
  return out
    .split('\n')
    .filter((l) => l !== '')
    .map((text) => {
      const value: unknown = JSON.parse(text);
      assert.ok(validate(value), JSON.stringify(validate.errors));
      return value as Line;
    });
}

describe('thermogloss results', () => {
  const folder = folderWith({
    'b.csv': smallRun,
    'b.gloss': smallGloss,
    'c.csv': smallRun,
    'c.gloss': smallGloss.replace('b.csv', 'c.csv'),
    'broken.gloss': `${smallGloss}step Broken 12,5..300 °C\n`,
    'failing.gloss': smallGloss.replace('380..620 °C', '950..990 °C'),
    'nowhere.gloss': smallGloss.replace('b.csv', 'nowhere.csv'),
    'share.csv': smallRun
      .replace('Mass / mg', 'Mass / %')
      .replace(/,([\d.]+)$/gm, (_, milligrams: string) => `,${(5 * Number(milligrams)).toFixed(5)}`),
    'share.gloss': 'run "share.csv"\nstep First 380..620 °C\n',
    'reading.gloss': 'run "share.csv"\nstep First 380..620 °C\nlet lost = First.amount\n',
    'm.gloss': 'method "Small"\n\nstep First 380..620 °C\n',
    'by-method.gloss': 'run "b.csv"\n  mass 20.000 ± 0.010 mg\nmethod "m.gloss"\n',
    'other.gloss':
      'run "b.csv"\n  mass 20.000 ± 0.010 mg\nmethod "m.gloss"\noverride step First 390..610 °C\n  because "narrower"\n',
  });
  after(() => folder.remove());
  const results = (...words: string[]) => say(['results', ...words], { cwd: folder.path });

  it('exits 1 where a named statement could not be read, and still prints the others', async () => {
    const { code, out, error } = await results('broken.gloss');
    assert.equal(code, 1);
    assert.match(out, /First\.loss/);
    assert.match(error, /decimal-comma/);
  });

  it('exits 0 for a run in percent without a specimen mass, and 1 where milligrams of it are read', async () => {
    const plain = await results('share.gloss');
    assert.equal(plain.code, 0, plain.out + plain.error);
    assert.match(plain.out, /First\.loss/);
    assert.doesNotMatch(plain.out, /mass_end|failed/);
    const all = await results('share.gloss', '--all');
    assert.match(all.out, /First\.mass_end .*failed: .*mass-missing/);
    const read = await results('reading.gloss');
    assert.equal(read.code, 1);
    assert.match(read.out, /First\.amount .*failed: .*mass-missing/);
  });

  it('gives the loss within its expanded uncertainty of the truth, in JSON that keeps the schema', async () => {
    const { code, out, error } = await results('b.gloss', '--format', 'json');
    assert.equal(error, '');
    assert.equal(code, 0);
    const [line, ...more] = lines(out);
    assert.equal(more.length, 0);
    assert.equal(line.run?.points, 1045);
    const loss = line.results.find((r) => r.id === 'First.loss')!;
    assert.equal(loss.line, 7);
    assert.ok(Math.abs(loss.value! - truth.loss) <= loss.k * loss.uncertainty!, JSON.stringify(loss));
    // The weighing alone gives 15 % · 0.010 / 20.000 = 0.0075 %.
    assert.ok(loss.uncertainty! >= 0.0075 && loss.uncertainty! < 0.1, String(loss.uncertainty));
    const double = line.results.find((r) => r.id === 'double')!;
    assert.ok(
      Math.abs(double.value! - 2 * loss.value!) < 1e-9 && Math.abs(double.uncertainty! - 2 * loss.uncertainty!) < 1e-9,
    );
    assert.deepEqual(
      line.requirements.map((r) => [r.name, r.verdict, r.low, r.high]),
      [['Loss', 'met', 14, 16]],
    );
  });

  it('shows the same numbers as text, as CSV and as Markdown', async () => {
    const [line] = lines((await results('b.gloss', '--format', 'json')).out);
    const loss = line.results.find((r) => r.id === 'First.loss')!;
    const text = (await results('b.gloss')).out;
    const shown = /First\.loss +([\d.]+) ± ([\d.]+) % \(initial\)/.exec(text);
    assert.ok(shown !== null, text);
    assert.ok(Math.abs(Number(shown[1]) - loss.value!) <= 0.05 * loss.uncertainty!);
    assert.ok(Math.abs(Number(shown[2]) - loss.uncertainty!) <= 0.05 * loss.uncertainty!);
    const csv = parse((await results('b.gloss', '--format', 'csv')).out, {
      columns: true,
      record_delimiter: '\r\n',
    }) as Record<string, string>[];
    assert.deepEqual([csv[0].result, csv[0].value, csv[0]['u (k = 1)']], ['First.loss', shown[1], shown[2]]);
    assert.ok((await results('b.gloss', '--format', 'markdown')).out.includes(`${shown[1]} ± ${shown[2]} % (initial)`));
    assert.match(text, /met +Loss: First\.loss in 14\.\.16 % .* U = [\d.]+ % \(k = 2\)/);
  });

  it('is one table over many runs, marks the one that differs from its method and leaves the method out', async () => {
    const { code, out, error } = await results('m.gloss', 'by-method.gloss', 'other.gloss');
    assert.equal(code, 0, error);
    assert.match(error, /m\.gloss is a method, without a run of its own/);
    assert.match(out, /\nby-method\.gloss +1[45]\.\d+ ± /);
    assert.match(out, /\nother\.gloss \* +1[45]\.\d+ ± /);
    assert.match(out, /\nn +2 /);
    assert.match(out, /\* other\.gloss differs from its method: step First \(narrower\)/);
  });

  it('writes one JSON object a gloss and line, whatever a terminal is asked to colour', async () => {
    const around = { cwd: folder.path, environment: { FORCE_COLOR: '1' }, isTerminal: true };
    const { out } = await say(['results', '?.gloss', '--format', 'json'], around);
    assert.deepEqual(
      lines(out).map((l) => l.gloss),
      ['b.gloss', 'c.gloss', 'm.gloss'],
    );
    const text = await say(['results', 'b.gloss'], around);
    assert.ok(text.out.includes('\u001b['));
    const plainText = await say(['results', 'b.gloss'], {
      ...around,
      environment: { FORCE_COLOR: '1', NO_COLOR: '1' },
    });
    assert.ok(!plainText.out.includes('\u001b['));
  });

  it('exits with 1 where a result failed and says why on standard error', async () => {
    const { code, out, error } = await results('failing.gloss');
    assert.equal(code, 1);
    assert.match(out, /First\.loss +.*failed: window-outside-run/);
    assert.match(error, /^failing\.gloss:7:12: error: .* \[window-outside-run\]$/m);
    const json = await results('failing.gloss', '--format', 'json');
    assert.equal(json.code, 1);
    assert.equal(lines(json.out)[0].requirements[0].verdict, 'not evaluated');
  });

  it('exits with 1 where the run is missing and there are no results at all', async () => {
    const { code, error } = await results('nowhere.gloss');
    assert.equal(code, 1);
    assert.match(error, /nowhere\.gloss:1:\d+: error: .*nowhere\.csv.* \[file-missing\]/);
    assert.equal(lines((await results('nowhere.gloss', '--format', 'json')).out)[0].run, null);
  });

  it('reads a gloss from standard input as if it stood where --at says', async () => {
    const placed = await say(['results', '-', '--at', 'sub/x.gloss', '--format', 'json'], {
      cwd: folder.path,
      input: smallGloss.replace('b.csv', '../b.csv'),
    });
    assert.equal(placed.code, 0, placed.error);
    const [line] = lines(placed.out);
    assert.equal(line.gloss, 'sub/x.gloss');
    assert.equal(line.run?.points, 1045);
  });

  it('names the method among the inputs, with the identity of its file', async () => {
    const [line] = lines((await results('by-method.gloss', '--format', 'json')).out);
    const method = 'method "Small"\n\nstep First 380..620 °C\n';
    const identity = createHash('sha256').update(method).digest('hex');
    assert.deepEqual(line.inputs, [{ role: 'method', path: 'm.gloss', identity }]);
    assert.equal(line.results.find((r) => r.id === 'First.loss')?.file, 'm.gloss');
  });

  it('writes to the file named with -o, whole, and nothing to standard output', async () => {
    const { code, out, error } = await results('b.gloss', '--format', 'json', '-o', 'out.json');
    assert.equal(error, 'out.json written\n');
    assert.deepEqual([code, out], [0, '']);
    assert.equal(lines(readFileSync(join(folder.path, 'out.json'), 'utf8')).length, 1);
  });

  it('explains each number and gives the construction lines when asked', async () => {
    const { out } = await results('b.gloss', '--explain', '--geometry');
    assert.match(out, /b\.csv \(run, 1045 points, SHA-256 [0-9a-f]{64}\)/);
    assert.match(out, /separated by commas, decimal point/);
    assert.match(out, /column 3 .*: mass/);
    assert.match(out, /heating 1 +30\.\d +900\.\d .* 10\.0/);
    assert.match(out, /First\.loss = 15\.\d+ ± .* k = 2/);
    assert.match(out, /u from .*mass of b 0\.0075/);
    assert.match(out, /Geometry of First: mass/);
    const geometry = await results('b.gloss', '--geometry', '--format', 'json');
    assert.ok('geometry' in lines(geometry.out)[0]);
  });
});
