import assert from 'node:assert/strict';
import { chmodSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { paintFor } from '../../server/src/cli/colour';
import type { Terminal } from '../../server/src/cli/terminal';
import { writeNew, writeWhole } from '../../server/src/cli/writeFile';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

describe('colour', () => {
  const coloured = (environment: Record<string, string>, isTerminal: boolean): boolean =>
    paintFor({ environment } as unknown as Terminal, isTerminal)('error', 'x') !== 'x';

  it('is for terminals that can, unless asked otherwise', () => {
    assert.equal(coloured({}, true), true);
    assert.equal(coloured({}, false), false);
    assert.equal(coloured({ TERM: 'dumb' }, true), false);
  });

  it('is turned on by FORCE_COLOR and off by NO_COLOR, which wins (no-color.org: set and not empty)', () => {
    assert.equal(coloured({ FORCE_COLOR: '1' }, false), true);
    assert.equal(coloured({ FORCE_COLOR: '0' }, true), false);
    assert.equal(coloured({ NO_COLOR: '1', FORCE_COLOR: '1' }, true), false);
    assert.equal(coloured({ NO_COLOR: '' }, true), true);
  });
});

describe('a file that is written', () => {
  const folder = folderWith({ 'a.gloss': 'old', 'b.gloss': 'kept' });
  after(() => folder.remove());
  const at = (name: string): string => join(folder.path, name);

  it('is there whole, with its mode, through a link, and leaves nothing beside it', () => {
    chmodSync(at('a.gloss'), 0o640);
    symlinkSync('a.gloss', at('link.gloss'));
    writeWhole(at('link.gloss'), 'new');
    assert.equal(readFileSync(at('a.gloss'), 'utf8'), 'new');
    assert.equal(statSync(at('a.gloss')).mode & 0o777, 0o640);
    assert.deepEqual(readdirSync(folder.path).sort(), ['a.gloss', 'b.gloss', 'link.gloss']);
  });

  it('is not overwritten where it must be new', () => {
    assert.equal(writeNew(at('b.gloss'), 'lost'), false);
    assert.equal(readFileSync(at('b.gloss'), 'utf8'), 'kept');
    assert.equal(writeNew(at('c.gloss'), 'fresh'), true);
  });

  it('is refused in words where it cannot be written', () => {
    assert.throws(() => writeWhole(at('nowhere/x.csv'), ''), /nowhere.x\.csv cannot be written \(ENOENT\)/);
  });
});

describe('results written to a file', () => {
  const files = {
    'data/b.csv': smallRun,
    'b.gloss': smallGloss.replace('"b.csv"', '"data/b.csv"'),
    'm.gloss': 'method "Small"\n',
    'b.gloss.approved.json': '{}\n',
    'table.csv': 'an older table\n',
  };
  const folder = folderWith(files);
  after(() => folder.remove());

  for (const [command, words] of [
    ['results', ['b.gloss']],
    ['check', ['b.gloss']],
    ['report', ['b.gloss']],
  ] as const) {
    it(`of ${command} never go over a run, a gloss or a record`, async () => {
      for (const name of ['data/b.csv', './data/../data/b.csv', 'b.gloss', 'm.gloss', 'b.gloss.approved.json']) {
        const { code, error } = await say([command, ...words, '-o', name], { cwd: folder.path });
        assert.equal(code, 2, name);
        assert.match(error, /not written over/, name);
      }
      for (const [name, text] of Object.entries(files)) {
        if (name !== 'table.csv') assert.equal(readFileSync(join(folder.path, name), 'utf8'), text, name);
      }
      const { code, error } = await say([command, ...words, '-o', 'table.csv'], { cwd: folder.path });
      assert.equal(code, 0, error);
      assert.notEqual(readFileSync(join(folder.path, 'table.csv'), 'utf8'), files['table.csv']);
    });
  }

  it('of a call from elsewhere spare the run too', async () => {
    const cwd = join(folder.path, 'data');
    const { code } = await say(['results', '../b.gloss', '-o', 'b.csv'], { cwd });
    assert.equal(code, 2);
    assert.equal(readFileSync(join(cwd, 'b.csv'), 'utf8'), smallRun);
  });

  it('are no matter of format: what is no gloss is not laid out', async () => {
    const { code, error } = await say(['format', 'data/b.csv'], { cwd: folder.path });
    assert.equal(code, 2);
    assert.match(error, /data.b\.csv is no \.gloss file/);
    assert.equal(readFileSync(join(folder.path, 'data', 'b.csv'), 'utf8'), smallRun);
  });
});
