import assert from 'node:assert/strict';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

describe('thermogloss new', () => {
  const folder = folderWith({
    'b.csv': smallRun,
    'runs/1.csv': smallRun,
    'runs/2.csv': smallRun,
    'runs/2.gloss': 'kept\n',
    'methods/m.gloss': 'method "Small"\n\nstep First 380..620 °C\n',
  });
  after(() => folder.remove());
  const at = (name: string): string => join(folder.path, name);
  const call = (...words: string[]) => say(words, { cwd: folder.path });

  it('prints a gloss that has no error, keeps its layout, and finds the one loss', async () => {
    const { code, out } = await call('new', 'b.csv');
    assert.equal(code, 0);
    assert.match(out, /^run "b\.csv"/m);
    assert.equal(out.match(/^step /gm)?.length, 1);
    const checked = await say(['check', '-', '--at', 'drafted.gloss'], { cwd: folder.path, input: out });
    assert.equal(checked.code, 0, checked.out);
    const laidOut = await say(['format', '-'], { cwd: folder.path, input: out });
    assert.equal(laidOut.out, out);
  });

  it('writes it with -o beside the run, and overwrites nothing', async () => {
    const first = await call('new', 'b.csv', '-o', 'b.gloss');
    assert.deepEqual([first.code, existsSync(at('b.gloss'))], [0, true]);
    assert.match(first.error, /^b\.gloss written$/m);
    const before = readFileSync(at('b.gloss'), 'utf8');
    const again = await call('new', 'b.csv', '-o', 'b.gloss');
    assert.doesNotMatch(again.error, /written/);
    assert.equal(again.code, 2);
    assert.match(again.error, /b\.gloss is already there; it was not changed/);
    assert.equal(readFileSync(at('b.gloss'), 'utf8'), before);
    assert.match((await call('new', 'b.csv', '-o', 'runs/b.gloss')).error, /a file beside the run/);
  });

  it('writes with a method a short gloss beside each run, which evaluates; one that is there stays', async () => {
    const { code, error } = await call('new', '--method', 'methods/m.gloss', 'runs/*.csv');
    assert.equal(code, 2);
    assert.match(error, /runs.1\.gloss written\n/);
    assert.match(error, /runs.2\.gloss is already there; it was not changed\n/);
    assert.equal(readFileSync(at('runs/2.gloss'), 'utf8'), 'kept\n');
    const text = readFileSync(at('runs/1.gloss'), 'utf8');
    assert.match(text, /^method "\.\.\/methods\/m\.gloss"/m);
    assert.ok(text.split('\n').length < 20, text);
    assert.match((await call('results', 'runs/1.gloss')).out, /First\.loss +15\./);
  });

  it('drafts one gloss at a time and takes no folder, no pattern without a match and no standard input', async () => {
    for (const words of [['runs/1.csv', 'b.csv'], ['runs'], ['*.none'], ['-'], ['none.csv']]) {
      const { code, out } = await call('new', ...words);
      assert.deepEqual([code, out], [2, ''], words.join(' '));
    }
  });
});

describe('thermogloss format', () => {
  const untidy = 'run "b.csv"\n\tmass   20.0520 mg\nstep First 380.0..620 °C   # why\n';
  const folder = folderWith({ 'a.gloss': untidy, 'sub/b.gloss': smallGloss });
  after(() => folder.remove());
  const at = (name: string): string => join(folder.path, name);
  const call = (...words: string[]) => say(['format', ...words], { cwd: folder.path });

  it('changes nothing with --check, lists what would change and exits with 1', async () => {
    const { code, out } = await call('--check', 'a.gloss');
    assert.deepEqual([code, out], [1, 'a.gloss\n']);
    assert.equal(readFileSync(at('a.gloss'), 'utf8'), untidy);
  });

  it('lays out in place, keeps numbers as they are written, and is done after one time', async () => {
    assert.equal((await call('a.gloss')).code, 0);
    const text = readFileSync(at('a.gloss'), 'utf8');
    assert.notEqual(text, untidy);
    assert.deepEqual(text.match(/[\d.]+/g), untidy.match(/[\d.]+/g));
    assert.deepEqual(await call('--check', 'a.gloss'), { code: 0, out: '', error: '' });
  });

  it('keeps a byte order mark and the line ends of the file', async () => {
    writeFileSync(at('crlf.gloss'), `\uFEFF${untidy.replaceAll('\n', '\r\n')}`);
    await call('crlf.gloss');
    const text = readFileSync(at('crlf.gloss'), 'utf8');
    assert.equal(text, `\uFEFF${readFileSync(at('a.gloss'), 'utf8').replaceAll('\n', '\r\n')}`);
  });

  it('goes from standard input to standard output', async () => {
    const piped = await say(['format', '-'], { cwd: folder.path, input: untidy });
    assert.deepEqual(piped, { code: 0, out: readFileSync(at('a.gloss'), 'utf8'), error: '' });
    const checked = await say(['format', '-', '--check'], { cwd: folder.path, input: untidy });
    assert.deepEqual([checked.code, checked.out], [1, 'standard input\n']);
  });

  it('leaves a file that is no UTF-8 as it is', async () => {
    const bytes = Buffer.from('run "K\u00f6rner.csv"\n', 'latin1');
    writeFileSync(at('latin.gloss'), bytes);
    assert.equal((await call('latin.gloss')).code, 2);
    assert.deepEqual(readFileSync(at('latin.gloss')), bytes);
  });
});
