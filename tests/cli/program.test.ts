import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { folderWith } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

// The bundle as it is installed, as a process of its own.
describe('the program', () => {
  const program = resolve('dist', 'thermogloss.js');
  const folder = folderWith({
    'b.csv': smallRun,
    'b.gloss': smallGloss,
    'odd.csv': smallRun.replace('380.000', '"380.000"'),
  });
  after(() => folder.remove());

  const call = (words: readonly string[], input = ''): ReturnType<typeof spawnSync> =>
    spawnSync(process.execPath, [program, ...words], {
      cwd: folder.path,
      input,
      encoding: 'utf8',
      env: { ...process.env, FORCE_COLOR: '', NO_COLOR: '' },
    });

  it('evaluates a small gloss and exits with its code, results and messages on their own streams', () => {
    const good = call(['results', 'b.gloss', '--format', 'json']);
    assert.deepEqual([good.status, good.stderr], [0, '']);
    assert.equal((JSON.parse(String(good.stdout)) as { gloss: string }).gloss, 'b.gloss');
    const bad = call(['results', 'none.gloss']);
    assert.deepEqual([bad.status, bad.stdout], [2, '']);
    assert.match(String(bad.stderr), /there is no file none\.gloss/);
  });

  it('reads a file that leaves the regular path with the parser that lies beside it', () => {
    const odd = call(['results', '-', '--at', 'odd.gloss', '--format', 'json'], smallGloss.replace('b.csv', 'odd.csv'));
    assert.equal(odd.status, 0, String(odd.stderr));
    const line = JSON.parse(String(odd.stdout)) as { run: { points: number } };
    assert.equal(line.run.points, 1045);
  });

  it('finds files by pattern, which no shell expanded', () => {
    const many = call(['check', '*.gloss', '--format', 'json']);
    assert.deepEqual([many.status, many.stderr], [0, '']);
    assert.equal(String(many.stdout).trimEnd().split('\n').length, 1);
  });

  it('does not carry that parser itself', () => {
    assert.ok(!readFileSync(program, 'utf8').includes('CSV_RECORD_INCONSISTENT'));
    assert.ok(readFileSync(resolve('dist', 'delimitedText.js'), 'utf8').includes('CSV_'));
  });

  it('ends quietly where its reader goes away', (done) => {
    const child = spawn(process.execPath, [program, 'results', 'b.gloss', '--all', '--explain'], { cwd: folder.path });
    let error = '';
    child.stderr.on('data', (text) => (error += String(text)));
    child.stdout.destroy();
    child.on('close', () => {
      assert.ok(!error.includes('EPIPE') && !error.includes('fault'), error);
      done();
    });
  });
});
