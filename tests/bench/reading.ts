import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NodeHost } from '../../server/src/host/nodeHost';
import { readRun } from '../../server/src/runs/reading/readRun';
import { time, type BenchRow, type NotRun } from './harness';
import { commaTable, longTable, pointTable } from './tables';

const rows = 200_000;
const millionRows = 1_000_000;

/** Median milliseconds of numpy.loadtxt, 15 readings after 3; null where there is no numpy. */
function numpyMedian(path: string): number | null {
  const script = `
import json, sys, time
import numpy
times = []
for k in range(18):
    start = time.perf_counter()
    table = numpy.loadtxt(sys.argv[1], delimiter=',')
    if k >= 3: times.append(1000 * (time.perf_counter() - start))
print(json.dumps([sorted(times)[7], table.shape]))
`;
  const run = spawnSync('python3', ['-c', script, path], { encoding: 'utf8' });
  if (run.status !== 0) return null;
  const [median, shape] = JSON.parse(run.stdout) as [number, number[]];
  assert.deepEqual(shape, [rows, 4]);
  return median;
}

async function read(host: NodeHost, path: string, expected: number): Promise<void> {
  const outcome = await readRun(host, path);
  assert.ok(outcome.ok && outcome.value.points === expected && outcome.value.columns.length === 4);
}

/** Peak memory (MB) and time (ms) of reading one file in a process of its own, the process's start not counted in time. */
function inOwnProcess(folder: string, path: string): { peak: number; milliseconds: number } {
  const module = (name: string): string => JSON.stringify(join(__dirname, '..', '..', 'server', 'src', name));
  const script = `
const { NodeHost } = require(${module('host/nodeHost')});
const { readRun } = require(${module('runs/reading/readRun')});
const start = performance.now();
readRun(new NodeHost(${JSON.stringify(folder)}), ${JSON.stringify(path)}).then(({ ok, value }) => {
  const milliseconds = performance.now() - start;
  if (!ok || value.points !== ${millionRows}) process.exit(1);
  console.log(JSON.stringify({ peak: (process.resourceUsage().maxRSS * 1024) / 1e6, milliseconds }));
});`;
  const run = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' });
  assert.equal(run.status, 0, run.stderr);
  return JSON.parse(run.stdout) as { peak: number; milliseconds: number };
}

/** Reading from disk to columns: opening, decoding, digest, detection and numbers. */
export async function reading(): Promise<readonly (BenchRow | NotRun)[]> {
  const folder = mkdtempSync(join(tmpdir(), 'gloss-bench-'));
  try {
    const host = new NodeHost(folder);
    const result: (BenchRow | NotRun)[] = [];
    for (const table of [pointTable(rows), commaTable(rows), longTable(rows)]) {
      const path = join(folder, 'run.csv');
      const plain = join(folder, 'plain.csv');
      writeFileSync(path, table.ours);
      writeFileSync(plain, table.plain);
      const { median, p95 } = await time(() => read(host, path, rows));
      const name = `200,000 x 4, ${table.name}`;
      result.push({ name, value: median, unit: 'ms', limit: null, note: `p95 ${p95.toFixed(1)} ms` });
      const numpy = numpyMedian(plain);
      const compared = `${name}, against numpy.loadtxt`;
      if (numpy === null) result.push({ name: compared, reason: 'no python3 with numpy' });
      else {
        const note = `numpy ${numpy.toFixed(1)} ms`;
        result.push({ name: compared, value: median / numpy, unit: '×', limit: 2, note });
      }
    }
    const path = join(folder, 'million.csv');
    writeFileSync(path, pointTable(millionRows).ours);
    const { peak, milliseconds } = inOwnProcess(folder, path);
    result.push({
      name: '1,000,000 x 4, own process',
      value: milliseconds,
      unit: 'ms',
      limit: null,
      note: 'one reading',
    });
    result.push({ name: '1,000,000 x 4, peak memory', value: peak, unit: 'MB', limit: 300, note: 'with the platform' });
    return result;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
