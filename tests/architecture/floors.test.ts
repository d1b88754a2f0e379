import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { folders } from './floors';
import { allImports, importsOf } from './imports';
import { brokenFloors, cycle, folderOf } from './rules';

describe('the floors', () => {
  const imports = allImports();

  it('hold: every file imports from lower floors and from the packages of its folder only', () => {
    assert.ok(imports.length > 100, 'the import lines were read');
    assert.deepEqual(brokenFloors(imports, folders), []);
  });

  it('have no cycle of files that load each other', () => {
    assert.equal(cycle(imports), null);
  });

  it('name every folder of the server, and no other', () => {
    const found = readdirSync(join('server', 'src'), { withFileTypes: true }).filter((e) => e.isDirectory());
    const filled = found.map((e) => e.name).filter((name) => readdirSync(join('server', 'src', name)).length > 0);
    const known = folders.map((f) => f.name);
    assert.deepEqual(
      filled.filter((name) => !known.includes(name)),
      [],
    );
  });

  it('are shown in DEVELOPERS.md as they are held here', () => {
    const text = readFileSync('DEVELOPERS.md', 'utf8');
    for (const { name, floor } of folders) {
      const row = text.split('\n').find((line) => new RegExp(`^\\| *${floor} *\\| *\`${name}\``).test(line));
      assert.notEqual(row, undefined, `a row for ${name} on floor ${floor}`);
    }
  });

  it('let only one file import csv-parse', () => {
    const files = imports.filter((i) => !i.ours && /^csv-parse/.test(i.to)).map((i) => i.from);
    assert.deepEqual([...new Set(files)], ['host/delimitedText']);
  });

  it('let only host and cli touch the disk', () => {
    const disk = imports.filter((i) => /^(?:node:)?fs(?:\/|$)/.test(i.to)).map((i) => folderOf(i.from));
    assert.deepEqual([...new Set(disk)].sort(), ['cli', 'host']);
  });

  it('load nothing that reaches a network', () => {
    const network = /^(?:node:)?(?:https?|http2|net|tls|dgram|dns|inspector)(?:\/|$)/;
    assert.deepEqual(
      imports.filter((i) => network.test(i.to)),
      [],
    );
  });
});

describe('the check of the floors', () => {
  const judged = (from: string, line: string): string[] => brokenFloors(importsOf(from, line), folders);

  it('refuses a higher floor, a neighbour, a package and an unknown folder', () => {
    assert.equal(judged('analysis/x', "import { y } from '../evaluation/y';").length, 1);
    assert.equal(judged('analysis/x', "import type { y } from '../language/y';").length, 1);
    assert.equal(judged('analysis/x', "import { y } from '../quantities/y';").length, 1);
    assert.equal(judged('runs/x', "import { parse } from 'csv-parse/sync';").length, 1);
    assert.equal(judged('runs/x', "const m = await import('node:fs');").length, 1);
    assert.equal(judged('elsewhere/x', "import { y } from '../base/y';").length, 1);
  });

  it('lets types of a shared contract through, and no code of the same file', () => {
    assert.deepEqual(judged('presentation/x', "import type { Snapshot } from '../engine/snapshot';"), []);
    assert.deepEqual(judged('presentation/x', "import { type Snapshot } from '../engine/snapshot';"), []);
    assert.equal(judged('presentation/x', "import { Snapshot } from '../engine/snapshot';").length, 1);
    assert.equal(judged('presentation/x', "import type { Engine } from '../engine/engine';").length, 1);
  });

  it('sees a cycle over three files, and none among types', () => {
    const lines = (kind: string): ReturnType<typeof importsOf> => [
      ...importsOf('runs/a', `import ${kind}{ b } from './b';`),
      ...importsOf('runs/b', `export ${kind}{ c } from './c';`),
      ...importsOf('runs/c', `import ${kind}{ a } from './a';`),
    ];
    assert.deepEqual(cycle(lines('')), ['runs/a', 'runs/b', 'runs/c', 'runs/a']);
    assert.equal(cycle(lines('type ')), null);
  });
});
