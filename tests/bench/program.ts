import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { syntheticRun } from '../support/syntheticRun';
import { time, type BenchRow, type Timing } from './harness';

const program = join(__dirname, '..', '..', '..', 'dist', 'thermogloss.js');
const steps = [
  { at: 200, width: 8, loss: 10 },
  { at: 500, width: 10, loss: 20 },
  { at: 800, width: 8, loss: 15 },
];
/** The ramp takes so long, s. */
const duration = 6000;

const six = [
  'step First 100..320 °C',
  'step Second 380..640 °C',
  'step Third 700..900 °C',
  'residue Rest at 980 °C',
  'crossing Tenth mass = 90 %',
  'let share = First.loss / Second.loss',
];

/** A run of so many rows and four columns, as of a simultaneous instrument. */
function fourColumns(rows: number): string {
  const run = syntheticRun({ every: duration / rows, rate: (970 / duration) * 60, steps });
  const lines = run.split('\n').slice(0, rows + 1);
  const written = lines.map((line, i) => `${line},${i === 0 ? 'heat flow / mW' : (-2 + 1e-5 * i).toFixed(5)}`);
  return `${written.join('\n')}\n`;
}

function evaluate(gloss: string): void {
  const run = spawnSync(process.execPath, [program, 'results', gloss], { encoding: 'utf8' });
  assert.equal(run.status, 0, run.stderr);
}

/** Peak memory of one evaluation in MB. */
function peakOf(gloss: string): number {
  const script = `process.argv.splice(1, 0, ${JSON.stringify(program)});
process.on('exit', () => process.stderr.write('peak ' + (process.resourceUsage().maxRSS * 1024) / 1e6));
require(${JSON.stringify(program)});`;
  const run = spawnSync(process.execPath, ['-e', script, 'results', gloss], { encoding: 'utf8' });
  const peak = /peak ([\d.]+)/.exec(run.stderr);
  assert.ok(run.status === 0 && peak !== null, run.stderr);
  return Number(peak[1]);
}

/** `thermogloss results` from the start of the process to its end: Node, reading, evaluation with uncertainty, findings, text. */
export async function startToEnd(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'gloss-bench-'));
  const write = (name: string, rows: number, statements: readonly string[]): string => {
    writeFileSync(join(folder, `${name}.csv`), fourColumns(rows));
    const path = join(folder, `${name}.gloss`);
    writeFileSync(path, [`run "${name}.csv"`, '  mass 20.000 ± 0.010 mg', ...statements, ''].join('\n'));
    return path;
  };
  try {
    const small = write('small', 1000, six.slice(0, 1));
    const large = write('large', 200_000, six);
    const million = write('million', 1_000_000, six);
    const bare = await time(() => spawnSync(process.execPath, ['-e', '0']));
    const row = (name: string, { median, p95 }: Timing, limit: number): BenchRow => ({
      name,
      value: median,
      unit: 'ms',
      limit,
      note: `p95 ${p95.toFixed(0)} ms; bare Node takes ${bare.median.toFixed(0)} ms`,
    });
    return [
      row('small run: 1,000 rows, one step', await time(() => evaluate(small)), 250),
      row('200,000 rows, six statements', await time(() => evaluate(large)), 500),
      row('1,000,000 rows, six statements', await time(() => evaluate(million), 5, 1), 1500),
      { name: '1,000,000 rows, peak memory', value: peakOf(million), unit: 'MB', limit: 300, note: '' },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
