import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expandInputs, glosses, runs } from '../../server/src/cli/inputs';
import { folderWith } from './fakeTerminal';

describe('what is named on the command line', () => {
  const folder = folderWith({
    'a.gloss': '',
    'b.gloss': '',
    'b.csv': '',
    '[ab].gloss': '',
    'series/run 1.gloss': '',
    'series/run 2.gloss': '',
    'series/run 2.csv': '',
    'series/node_modules/x.gloss': '',
    'empty/readme.md': '',
  });
  after(() => folder.remove());

  const named = async (...operands: string[]): Promise<string[]> => {
    const paths = await expandInputs(operands, folder.path, glosses);
    return paths.map((p) => (p === '-' ? p : relative(folder.path, p).replaceAll('\\', '/')));
  };

  it('keeps its order and names nothing twice', async () => {
    assert.deepEqual(await named('b.gloss', 'a.gloss', './b.gloss'), ['b.gloss', 'a.gloss']);
    assert.deepEqual(await named('b.gloss', '?.gloss'), ['b.gloss', 'a.gloss']);
  });

  it('is a path first, and a pattern only where there is no such path', async () => {
    assert.deepEqual(await named('[ab].gloss'), ['[ab].gloss']);
    assert.deepEqual(await named('[ac].gloss'), ['a.gloss']);
  });

  it('takes patterns over folders, with braces, absolute, and climbing', async () => {
    assert.deepEqual(await named('**/*.gloss'), [
      '[ab].gloss',
      'a.gloss',
      'b.gloss',
      'series/run 1.gloss',
      'series/run 2.gloss',
    ]);
    assert.deepEqual(await named('{b,a}.gloss'), ['a.gloss', 'b.gloss']);
    assert.deepEqual(await named(`${folder.path.replaceAll('\\', '/')}/series/*2*`), ['series/run 2.gloss']);
    const inside = await expandInputs(['../?.gloss'], join(folder.path, 'series'), glosses);
    assert.deepEqual(
      inside.map((p) => relative(folder.path, p)),
      ['a.gloss', 'b.gloss'],
    );
  });

  it('takes a folder for the glosses below it, never those of installed packages', async () => {
    assert.deepEqual(await named('series'), ['series/run 1.gloss', 'series/run 2.gloss']);
  });

  it('may be standard input for a gloss, not for a run', async () => {
    assert.deepEqual(await named('-'), ['-']);
    await assert.rejects(expandInputs(['-'], folder.path, runs), /not from standard input/);
  });

  it('is refused where nothing is found', async () => {
    await assert.rejects(named('a.gloss', 'c.gloss'), /there is no file c\.gloss/);
    await assert.rejects(named('*.none'), /no \.gloss file matches \*\.none/);
    await assert.rejects(named('empty'), /holds no \.gloss file/);
    await assert.rejects(expandInputs(['series'], folder.path, runs), /is a folder/);
  });

  it('may hold any character a file name can', async () => {
    const name = 'µ é 試料 #1 & $x.gloss';
    mkdirSync(join(folder.path, 'odd'));
    writeFileSync(join(folder.path, 'odd', name), '');
    assert.deepEqual(await named(`odd/${name}`), [`odd/${name}`]);
    assert.deepEqual(await named('odd/*'), [`odd/${name}`]);
  });
});
