import assert from 'node:assert/strict';
import type { TextDocumentEdit } from 'vscode-languageserver-types';
import { fullClient } from '../../server/src/features/abilities';
import { codeActions } from '../../server/src/features/actions/actions';
import { movedFile } from '../../server/src/features/files/movedFile';
import { pathsAfterMoves } from '../../server/src/features/files/moves';
import { relativePath } from '../../server/src/features/files/paths';
import { documentLinks } from '../../server/src/features/links';
import { TextPositions } from '../../server/src/features/positions';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { examples, prefixes } from './support/examples';
import { bench } from './support/fixture';
import { lossRun } from '../lsp/support/lossRun';

describe('links', () => {
  it('lead to the files that are there, and say of the others that they are missing', async () => {
    const at = bench(
      'run "«a.csv»"\njoin "«gone.txt»"\nblank "«blank.gloss»"\nmethod "«m.gloss»"\ncolumns of "«gone.txt»"\n  time column 1 in s\nreading of "«sub/ä b.csv»"\n  skip 1 lines\nnote "a.csv"\n',
      { 'a.csv': 'x', 'blank.gloss': 'run "b.csv"\n', 'm.gloss': 'method "M"\n', 'sub/ä b.csv': 'x' },
    );
    const links = await documentLinks(at.workspace, await at.document());
    assert.deepEqual(
      links.map(({ range }) => range),
      at.marks.ranges,
    );
    assert.deepEqual(
      links.map(({ target }) => target),
      [
        'file:///lab/a.csv',
        undefined,
        'file:///lab/blank.gloss',
        'file:///lab/m.gloss',
        undefined,
        'file:///lab/sub/%C3%A4%20b.csv',
      ],
    );
    assert.deepEqual([links[0].tooltip, links[1].tooltip], ['a.csv', 'Missing: there is no file gone.txt']);
    // A link needs no look into what may be a file of many megabytes: the method alone was read.
    assert.equal(at.outside.host.counts.of('read'), 1);
  });

  it('are told of every prefix of the examples without a fault', async () => {
    let seen = 0;
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const at = bench(prefix);
        seen += (await documentLinks(at.workspace, await at.document())).length;
      }
    }
    assert.ok(seen > 1000, `${seen} links`);
  }).timeout(120_000);
});

describe('paths in the glosses', () => {
  const files = {
    'm.gloss': 'method "M"\n',
    'runs/one/b.gloss':
      'run "b.csv"\nblank "./blank.csv"\nmethod "../../m.gloss"\njoin "a \\"b\\".csv" # b.csv\ncolumns of "b.csv"\n  time column 1\nreading of "b.csv" broken\nnote "b.csv"\n',
    'runs/two/c.gloss': 'run "../one/b.csv"\nmethod "/lab/m.gloss"\n',
    'runs/one/b.csv': 'x',
  };

  /** Texts after files moved, by name; the edit is one. */
  async function moved(...moves: readonly (readonly [from: string, to: string])[]): Promise<Record<string, string>> {
    const at = bench('run "runs/one/b.csv"\nblank "runs/one/b.gloss"\n', files);
    const uri = (path: string): string => `file:///lab/${path}`;
    const edit = await pathsAfterMoves(
      at.workspace,
      moves.map(([from, to]) => ({ oldUri: uri(from), newUri: uri(to) })),
    );
    const texts: Record<string, string> = { 'a.gloss': at.marks.text, ...files };
    const after: Record<string, string> = {};
    for (const { textDocument, edits } of (edit?.documentChanges ?? []) as TextDocumentEdit[]) {
      const name = textDocument.uri.slice('file:///lab/'.length);
      assert.equal(textDocument.version, name === 'a.gloss' ? 1 : null);
      assert.ok(!(name in after), 'each text once');
      const positions = new TextPositions(texts[name]);
      after[name] = [...edits]
        .sort((a, b) => b.range.start.line - a.range.start.line)
        .reduce(
          (text, e) =>
            text.slice(0, positions.raw(e.range.start)) +
            ('newText' in e ? e.newText : '') +
            text.slice(positions.raw(e.range.end)),
          texts[name],
        );
    }
    return after;
  }

  it('follow a data file that is renamed, also in lines that are broken behind it; texts and comments stay', async () => {
    const after = await moved(['runs/one/b.csv', 'runs/one/new "name".csv']);
    assert.deepEqual(Object.keys(after).sort(), ['a.gloss', 'runs/one/b.gloss', 'runs/two/c.gloss']);
    assert.equal(
      after['runs/one/b.gloss'],
      files['runs/one/b.gloss'].replaceAll(/(run|of) "b\.csv"/g, '$1 "new \\"name\\".csv"'),
    );
    assert.equal(
      after['runs/two/c.gloss'],
      files['runs/two/c.gloss'].replace('../one/b.csv', '../one/new \\"name\\".csv'),
    );
    assert.match(after['a.gloss'], /^run "runs\/one\/new \\"name\\"\.csv"\nblank "runs\/one\/b\.gloss"/);
  });

  it('follow a method that moves, keeping an absolute path absolute', async () => {
    assert.deepEqual(await moved(['m.gloss', 'methods/lime.gloss']), {
      'runs/one/b.gloss': files['runs/one/b.gloss'].replace('../../m.gloss', '../../methods/lime.gloss'),
      'runs/two/c.gloss': files['runs/two/c.gloss'].replace('/lab/m.gloss', '/lab/methods/lime.gloss'),
    });
  });

  it('in a gloss that moves itself lead to the same files from its new place', async () => {
    assert.deepEqual(await moved(['runs/one/b.gloss', 'b.gloss']), {
      'a.gloss': 'run "runs/one/b.csv"\nblank "b.gloss"\n',
      'runs/one/b.gloss': files['runs/one/b.gloss']
        .replaceAll(/(run|of) "b\.csv"/g, '$1 "runs/one/b.csv"')
        .replace('./blank.csv', './runs/one/blank.csv')
        .replace('../../m.gloss', 'm.gloss')
        .replace('a \\"b\\".csv', 'runs/one/a \\"b\\".csv'),
    });
  });

  it('follow a folder, and stay as they are between files that move together', async () => {
    assert.deepEqual(await moved(['runs/one', 'archive']), {
      'a.gloss': 'run "archive/b.csv"\nblank "archive/b.gloss"\n',
      'runs/one/b.gloss': files['runs/one/b.gloss'].replace('../../m.gloss', '../m.gloss'),
      'runs/two/c.gloss': files['runs/two/c.gloss'].replace('../one/b.csv', '../../archive/b.csv'),
    });
    // A folder whose name only begins alike is another one.
    assert.deepEqual(await moved(['runs/on', 'x']), {});
  });

  it('follow two files that move at once, and change nothing where none is named', async () => {
    const after = await moved(['runs/one/b.csv', 'data/b.csv'], ['m.gloss', 'n.gloss']);
    assert.match(
      after['runs/one/b.gloss'],
      /^run "\.\.\/\.\.\/data\/b\.csv"\nblank "\.\/blank\.csv"\nmethod "\.\.\/\.\.\/n\.gloss"/,
    );
    assert.deepEqual(await moved(['other.csv', 'x.csv']), {});
  });

  it('are written relative, over drives whole, and plainly where files come through the client', () => {
    assert.equal(relativePath('/lab/a', '/lab/b/c.csv'), '../b/c.csv');
    assert.equal(relativePath('/lab', '/lab/c.csv'), 'c.csv');
    assert.equal(relativePath('C:/lab', 'D:/x/c.csv'), 'D:/x/c.csv');
    assert.equal(relativePath('C:/lab/a', 'C:/c.csv'), '../../c.csv');
    assert.equal(relativePath('vscode-vfs://host/lab/a', 'vscode-vfs://host/lab/b%20%C3%A4.csv'), '../b ä.csv');
  });
});

describe('a missing file', () => {
  const identityOf = async (host: MemoryHost, path: string): Promise<string> => {
    const read = await host.read(path);
    return read.ok ? read.identity : '';
  };

  it('is looked for by its name in folders near the gloss, the nearest first', async () => {
    const host = new MemoryHost({
      'p/q/a.gloss': '',
      'p/data/b.csv': '1',
      'p/q/deep/er/b.csv': '2',
      'x/b.csv': '3',
      'p/q/c.csv': '4',
    });
    const found = await movedFile(host, { gloss: '/lab/p/q/a.gloss', file: 'b.csv', identity: null });
    assert.deepEqual(found, [
      { file: 'deep/er/b.csv', same: false },
      { file: '../data/b.csv', same: false },
      { file: '../../x/b.csv', same: false },
    ]);
    assert.deepEqual(await movedFile(host, { gloss: '/lab/p/q/a.gloss', file: 'none.csv', identity: null }), []);
  });

  it('is known again by its content, whatever its name and however its lines end now', async () => {
    const host = new MemoryHost({
      'a.gloss': '',
      'old.csv': 'a\nb\n',
      'new name.csv': 'a\r\nb\r\n',
      'sub/old.csv': 'other',
      'same.txt': 'a\nb\n',
    });
    const identity = await identityOf(host, '/lab/old.csv');
    host.put('old.csv', null);
    const found = await movedFile(host, { gloss: '/lab/a.gloss', file: 'old.csv', identity });
    assert.deepEqual(found, [
      { file: 'new name.csv', same: true },
      { file: 'sub/old.csv', same: false },
    ]);
  });

  it('is not looked for all over a disk: folders and files read are bounded', async () => {
    const many: Record<string, string> = { 'a.gloss': '' };
    for (let i = 0; i < 900; i += 1) many[`f${i}/g/h/x${i}.csv`] = String(i);
    const host = new MemoryHost(many);
    await movedFile(host, { gloss: '/lab/a.gloss', file: 'b.csv', identity: 'none' });
    assert.ok(host.counts.of('list') <= 300 && host.counts.of('read') <= 12, JSON.stringify(host.counts.all()));
  });

  it('had the content that results were computed from', async () => {
    const at = bench('run "a.csv"\n  hazard "none: invented"\nstep A 200..450 °C\n', {
      'a.csv': lossRun(),
      'z.csv': lossRun(),
    });
    assert.equal(at.workspace.identitySeen('/lab/a.csv'), null);
    await at.settled();
    const identity = at.workspace.identitySeen('/lab/a.csv');
    assert.equal(identity, await identityOf(at.outside.host, '/lab/a.csv'));
    at.outside.host.put('a.csv', null);
    at.workspace.filesChanged(['file:///lab/a.csv']);
    await at.settled();
    assert.equal(at.workspace.results(at.uri)?.snapshot.run, null);
    assert.equal(at.workspace.identitySeen('/lab/a.csv'), identity, 'kept while the file is missing');
    const found = await movedFile(at.outside.host, { gloss: '/lab/a.gloss', file: 'a.csv', identity });
    assert.deepEqual(found, [{ file: 'z.csv', same: true }]);
  });

  it('is offered where it lies now, the one with the content read before as the one to take', async () => {
    const source = 'run "a.csv|"\n  hazard "none: invented"\nstep A 200..450 °C\n';
    const at = bench(source, { 'a.csv': lossRun(), 'sub/a.csv': lossRun(340) });
    await at.settled();
    at.outside.host.put('moved/here "b".csv', lossRun());
    at.outside.host.put('a.csv', null);
    at.workspace.filesChanged(['file:///lab/a.csv']);
    await at.settled();
    const range = { start: at.marks.cursor, end: at.marks.cursor };
    const actions = await codeActions(at.workspace, await at.document(), range, { diagnostics: [] }, fullClient);
    const fixes = actions.filter(({ title }) => title.includes('.csv'));
    assert.deepEqual(
      fixes.map(({ title }) => title),
      ['Write "moved/here \\"b\\".csv", which holds what was read before', 'Write "sub/a.csv"'],
    );
    const edits = fixes.map(({ edit }) => (edit?.documentChanges as TextDocumentEdit[])[0].edits[0]);
    assert.deepEqual(edits[1], {
      range: { start: { line: 0, character: 4 }, end: { line: 0, character: 11 } },
      newText: '"sub/a.csv"',
    });
    // Where the file is there, nothing is looked for.
    const there = bench(source, { 'a.csv': lossRun(), 'sub/a.csv': lossRun(340) });
    await there.settled();
    const none = await codeActions(there.workspace, await there.document(), range, { diagnostics: [] }, fullClient);
    assert.ok(none.length > 0 && none.every(({ title }) => !title.includes('.csv')));
  });
});
