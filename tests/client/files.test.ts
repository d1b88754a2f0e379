import assert from 'node:assert/strict';
import fc from 'fast-check';
import { posix } from 'node:path';
import { freeName } from '../../client/src/commands/freeName';
import { columnFor } from '../../client/src/curves/columns';
import { FileChanges, fileChange, type FileChange } from '../../client/src/files/changes';
import { gitFolder } from '../../client/src/files/gitFolder';
import { OutsideFolders } from '../../client/src/files/outsideFolders';
import { reachable } from '../../client/src/files/reachable';
import { fromBase64, toBase64 } from '../../client/src/text/base64';
import { isDataFile } from '../../client/src/text/dataFiles';
import { fileName } from '../../client/src/text/fileName';

describe('changes of files', () => {
  it('that come in one go are told once, a replaced file as changed (LSP 3.17: created 1, changed 2, deleted 3)', async () => {
    const told: unknown[] = [];
    const changes = new FileChanges((all) => told.push(all));
    const add = (uri: string, type: FileChange): void => changes.add(uri, type);
    add('a', fileChange.deleted);
    add('a', fileChange.created);
    add('b', fileChange.changed);
    add('b', fileChange.deleted);
    assert.deepEqual(told, []);
    await Promise.resolve();
    add('c', fileChange.created);
    await Promise.resolve();
    assert.deepEqual(told, [
      [
        { uri: 'a', type: 2 },
        { uri: 'b', type: 3 },
      ],
      [{ uri: 'c', type: 1 }],
    ]);
  });
});

describe('folders outside the workspace', () => {
  it('are watched while a gloss of them is open, each once', () => {
    const log: string[] = [];
    const outside = new OutsideFolders((folder) => {
      log.push(`+${folder}`);
      return { dispose: () => log.push(`-${folder}`) };
    });
    outside.set(new Set(['a', 'b']));
    outside.set(new Set(['b', 'c']));
    outside.dispose();
    assert.deepEqual(log, ['+a', '+b', '-a', '+c', '-b', '-c']);
  });
});

describe('the folder of a repository', () => {
  /** Files by path; null: a folder. */
  const of = (files: Readonly<Record<string, string | null>>, folder: string): Promise<string | null> =>
    gitFolder(folder, {
      isFolder: (path) => Promise.resolve(path in files ? files[path] === null : null),
      text: (path) => Promise.resolve(files[path]!),
    });

  it('lies beside the folder or above it, at its nearest', async () => {
    const files = { '/a/.git': null, '/a/b/c/.git': null };
    assert.equal(await of(files, '/a'), '/a/.git');
    assert.equal(await of(files, '/a/b'), '/a/.git');
    assert.equal(await of(files, '/a/b/c/d/e'), '/a/b/c/.git');
    assert.equal(await of({ '/.git': null }, '/a/b'), '/.git');
    assert.equal(await of(files, '/z'), null);
    assert.equal(await of({}, ''), null);
  });

  it('is where the file of a second working tree says: gitrepository-layout(5)', async () => {
    for (const [text, folder] of [
      ['gitdir: /a/.git/worktrees/w\n', '/a/.git/worktrees/w'],
      ['gitdir: ../a/.git/modules/w\n', '/w/../a/.git/modules/w'],
      ['gitdir: C:/a/.git/worktrees/w\r\n', '/C:/a/.git/worktrees/w'],
      ['something else', null],
    ] as const) {
      assert.equal(await of({ '/w/.git': text }, '/w/runs'), folder, text);
    }
  });
});

describe('a file asked for by a server without a disk', () => {
  const folders = ['file:///lab/runs', 'vscode-vfs://host/repo'];

  it('is read below the open folders only', () => {
    for (const uri of ['file:///lab/runs', 'file:///lab/runs/a/b.csv', 'vscode-vfs://host/repo/x.csv']) {
      assert.equal(reachable(uri, folders), true, uri);
    }
    for (const uri of [
      'file:///lab',
      'file:///lab/runs2/b.csv',
      'file:///etc/passwd',
      'file:///lab/runs/../secret',
      'file:///lab/runs/%2e%2E/secret',
      'file:///lab/runs/.%2e/secret',
      'vscode-vfs://other/repo/x.csv',
    ]) {
      assert.equal(reachable(uri, folders), false, uri);
    }
  });

  it('never leaves them, however its address is put together', () => {
    const piece = fc.constantFrom('..', '.', '%2e%2e', '%2E.', 'a', 'runs', 'runs2', '');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        const uri = `file:///lab/${pieces.join('/')}`;
        // What a file system makes of it (POSIX.1-2017, 4.13 pathname resolution, by Node's path module).
        const path = posix.normalize(decodeURIComponent(new URL('file:///').pathname + uri.slice('file:///'.length)));
        if (reachable(uri, folders)) assert.ok(`${path}/`.startsWith('/lab/runs/'), `${uri} is ${path}`);
      }),
    );
  });
});

describe('names of files', () => {
  it('that instruments export are known in any case of letters', () => {
    for (const path of ['/a/b.csv', '/a/B.TXT', '/a/b.c.Dat']) assert.equal(isDataFile(path), true, path);
    for (const path of ['/a/b.gloss', '/a/csv', '/a.csv/b', '/a/b.csv.gz']) assert.equal(isDataFile(path), false, path);
  });

  it('for a draft are the first that is free', async () => {
    const taken = new Set(['/a.b/b.gloss', '/a.b/b-2.gloss', '/a.b/c']);
    const free = (path: string): Promise<string> => freeName(path, (p) => Promise.resolve(taken.has(p)));
    assert.equal(await free('/a.b/b.gloss'), '/a.b/b-3.gloss');
    assert.equal(await free('/a.b/d.gloss'), '/a.b/d.gloss');
    assert.equal(await free('/a.b/c'), '/a.b/c-2');
  });

  it('for an export name no folder', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('.', '/', '\\', 'a', '\0', ':', '%') }), (name) => {
        const own = fileName(name);
        assert.ok(own !== '' && own !== '.' && own !== '..');
        assert.equal(posix.basename(own), own);
        assert.doesNotMatch(own, /[\\\0:]/);
      }),
    );
  });
});

describe('bytes in base64', () => {
  it("are as Node's own writer has them (RFC 4648)", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        assert.equal(toBase64(bytes), Buffer.from(bytes).toString('base64'));
        assert.deepEqual([...fromBase64(toBase64(bytes))], [...bytes]);
      }),
    );
  });

  it('may be many', () => {
    const bytes = Uint8Array.from({ length: 1_000_003 }, (_, i) => (i * 7919) & 255);
    assert.equal(toBase64(bytes), Buffer.from(bytes).toString('base64'));
  });
});

describe('a column beside', () => {
  it('is the other of two, and does not walk to the right', () => {
    assert.equal(columnFor(1, 1), 2);
    assert.equal(columnFor(1, 2), 2);
    assert.equal(columnFor(2, 2), 1);
    assert.equal(columnFor(3, 3), 2);
    assert.equal(columnFor(undefined, 1), 2);
  });
});
