import assert from 'node:assert/strict';
import { chmodSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { paintFor } from '../../server/src/cli/colour';
import type { Terminal } from '../../server/src/cli/terminal';
import { writeNew, writeWhole } from '../../server/src/cli/writeFile';
import { folderWith } from './fakeTerminal';

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
