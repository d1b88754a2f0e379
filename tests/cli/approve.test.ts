import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { files } from '../approval/support/lab';
import { folderWith, say, type Said } from './fakeTerminal';

const clock = { today: () => '2026-10-02' };

describe('thermogloss approve', () => {
  let folder = folderWith(files);
  beforeEach(() => {
    folder.remove();
    folder = folderWith(files);
  });
  after(() => folder.remove());
  const at = (name: string): string => join(folder.path, name);
  const read = (name: string): string => readFileSync(at(name), 'utf8');
  const call = (...words: string[]): Promise<Said> => say(words, { cwd: folder.path, clock });
  const approve = (...words: string[]): Promise<Said> => call('approve', 'series/b.gloss', ...words);

  it('writes the record and one line, of today, and nothing else; check then finds nothing against it', async () => {
    const before = Object.keys(files).map((name) => [name, read(name)] as const);
    const { code, out, error } = await approve('--by', 'M. Ruiz');
    assert.deepEqual([code, out], [0, '']);
    assert.match(
      error,
      /^series\/b\.gloss approved by M\. Ruiz, digest [0-9a-f]{32}; record: series\/b\.gloss\.approved\.json\n$/,
    );
    const digest = /digest ([0-9a-f]{32})/.exec(error)![1];
    for (const [name, text] of before) {
      const line = name === 'series/b.gloss' ? `approved by "M. Ruiz" on 2026-10-02 digest ${digest}\n` : '';
      assert.equal(read(name), text + line, name);
    }
    const checked = await call('check', 'series/b.gloss');
    assert.equal(checked.code, 0);
    assert.doesNotMatch(checked.out, /appro/);
  });

  it('keeps a byte order mark and the line ends of the gloss', async () => {
    const text = `\uFEFF${read('series/b.gloss').replaceAll('\n', '\r\n')}`;
    writeFileSync(at('series/b.gloss'), text);
    assert.equal((await approve('--by', 'M. Ruiz', '--date', '2026-10-05')).code, 0);
    const after = read('series/b.gloss');
    assert.ok(after.startsWith(text));
    assert.match(after.slice(text.length), /^approved by "M\. Ruiz" on 2026-10-05 digest [0-9a-f]{32}\r\n$/);
    assert.equal((await call('check', 'series/b.gloss')).code, 0);
  });

  it('lets check and results say what changed since, from what to what, and fail the check', async () => {
    await approve('--by', 'M. Ruiz');
    writeFileSync(at('m.gloss'), read('m.gloss').replace('380..620', '440..620'));
    const checked = await call('check', 'series/b.gloss');
    assert.equal(checked.code, 1);
    assert.match(
      checked.out,
      /b\.gloss:20:1: error: .* step First 380\.\.620 °C → step First 440\.\.620 °C\. \[approval-broken\]/,
    );
    assert.match(checked.out, /First\.loss from 15\.\d+ .* to 14\.\d+ .*\[approved-result-moved\]/);
    const { out } = await call('results', 'series/b.gloss', '--format', 'json');
    const { findings } = JSON.parse(out) as { findings: { code: string; line: number }[] };
    assert.deepEqual(
      findings.filter((f) => f.code.startsWith('approv')).map((f) => [f.code, f.line]),
      [
        ['approval-broken', 20],
        ['approved-result-moved', 20],
      ],
    );
    const renewed = await approve('--by', 'C. Lund');
    assert.match(renewed.error, /^the approval by M\. Ruiz on 2026-10-02 is replaced\n/);
    assert.equal((await call('check', 'series/b.gloss')).code, 0);
  });

  it('demands a reason where a requirement is not met, and writes nothing without it', async () => {
    const text = read('series/b.gloss').replace('<= 32.0 %', '<= 29 %');
    writeFileSync(at('series/b.gloss'), text);
    const refused = await approve('--by', 'M. Ruiz');
    assert.equal(refused.code, 2);
    assert.match(refused.error, /approved with a reason only: line 17: requirement-not-met; --because "…" gives it/);
    assert.equal(read('series/b.gloss'), text);
    assert.throws(() => read('series/b.gloss.approved.json'), /ENOENT/);
    assert.equal((await approve('--by', 'M. Ruiz', '--because', 'a trial batch')).code, 0);
    assert.match(read('series/b.gloss'), /\n {2}because "a trial batch"\n$/);
  });

  it('can be compared with the gloss as a saved result', async () => {
    await approve('--by', 'M. Ruiz');
    const { code, out } = await call('diff', 'series/b.gloss.approved.json', 'series/b.gloss');
    assert.equal(code, 0);
    assert.match(out, /No result moved beyond tolerance/);
  });

  it('refuses what it cannot stand for with exit code 2 and words for it', async () => {
    mkdirSync(at('broken'));
    writeFileSync(at('broken/a.gloss'), Uint8Array.of(0x72, 0xff, 0xfe, 0x80));
    writeFileSync(at('broken/none.gloss'), 'run "gone.csv"\nstep A 40..80 °C\n');
    const cases: readonly (readonly [readonly string[], RegExp])[] = [
      [['series/b.gloss'], /needs who approves: --by NAME/],
      [['--by', 'M'], /needs one gloss/],
      [['series/b.gloss', 'm.gloss', '--by', 'M'], /needs one gloss/],
      [['.', '--by', 'M'], /stands for several glosses; approve takes one/],
      [['-', '--by', 'M'], /writes beside a gloss: name its file/],
      [['gone.gloss', '--by', 'M'], /there is no file gone\.gloss/],
      [['broken/a.gloss', '--by', 'M'], /not UTF-8/],
      [
        ['broken/none.gloss', '--by', 'M', '--because', 'x'],
        /no run that can be read: There is no file broken\/gone\.csv/,
      ],
      [['m.gloss', '--by', 'M'], /is a method and has no results/],
      ...['2026-02-30', ' 2026-10-02 ', '2026-10-02 # x', '2026-10-2'].map(
        (day) =>
          [['series/b.gloss', '--by', 'M', '--date', day], /--date .*2026.*: write a day as YYYY-MM-DD/] as const,
      ),
      [['series/b.gloss', '--by', ''], /--by needs a value/],
    ];
    for (const [words, message] of cases) {
      const { code, error } = await call('approve', ...words);
      assert.equal(code, 2, words.join(' '));
      assert.match(error, message, words.join(' '));
    }
    assert.equal(read('series/b.gloss'), files['series/b.gloss']);
  });

  it('never writes through a link that stands where the record goes', async () => {
    symlinkSync(at('series/b.csv'), at('series/b.gloss.approved.json'));
    const { code, error } = await approve('--by', 'M. Ruiz');
    assert.equal(code, 2);
    assert.match(error, /is a link/);
    assert.equal(read('series/b.csv'), files['series/b.csv']);
    assert.equal(read('series/b.gloss'), files['series/b.gloss']);
  });

  it('finds, with git, that who approved is who committed the statements, unless the gloss names an evaluator', async () => {
    const git = (...words: string[]): void => void execFileSync('git', words, { cwd: folder.path });
    const commit = (): void => git('-c', 'user.name=M. Ruiz', '-c', 'user.email=m@x.invalid', 'commit', '-qam', 'x');
    await approve('--by', 'M. Ruiz');
    assert.doesNotMatch((await call('check', 'series/b.gloss')).out, /approved-by-evaluator/);
    writeFileSync(at('series/b.gloss'), read('series/b.gloss').replace(/ {2}evaluator .*\n/, ''));
    assert.equal((await approve('--by', 'M. Ruiz')).code, 0);
    assert.doesNotMatch((await call('check', 'series/b.gloss')).out, /approved-by-evaluator/);
    git('init', '-q');
    git('add', '-A');
    commit();
    const { code, out } = await call('check', 'series/b.gloss');
    assert.equal(code, 0);
    assert.match(out, /M\. Ruiz approved and evaluated \(author of the last change to the statements in git\)/);
    rmSync(at('.git'), { recursive: true });
    assert.doesNotMatch((await call('check', 'series/b.gloss')).out, /approved-by-evaluator/);
  });
});
