import assert from 'node:assert/strict';
import type { Location, LocationLink, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { startClient, type TestClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

const gloss = 'run "a.csv"\nmethod "m.gloss"\nlet x = First.loss\nstep Own 1..2 °C\n';
const files = {
  'a.csv': 'x',
  'm.gloss': 'method "M"\nstep First 200..450 °C\n',
  'b.gloss': 'run "a.csv"\nmethod "m.gloss"\n',
};
const onFirst = { line: 2, character: 10 };

/** What each request answers for a document nobody opened, or of a scheme nobody knows. */
const requests: readonly (readonly [method: string, params: object, empty: unknown])[] = [
  ['textDocument/definition', { position: onFirst }, []],
  ['textDocument/references', { position: onFirst, context: { includeDeclaration: true } }, []],
  ['textDocument/documentHighlight', { position: onFirst }, []],
  ['textDocument/prepareRename', { position: onFirst }, null],
  ['textDocument/rename', { position: onFirst, newName: 'Other' }, null],
  ['textDocument/documentSymbol', {}, []],
  ['textDocument/documentLink', {}, []],
  ['textDocument/linkedEditingRange', { position: onFirst }, null],
];

describe('names and files over the protocol', () => {
  let client: TestClient;
  const start = async (capabilities = {}): Promise<string> => {
    client = await startClient(new MemoryOutside(files), capabilities);
    return client.open('a.gloss', gloss);
  };
  const ask = <R>(method: string, uri: string, params: object): Promise<R> =>
    client.connection.sendRequest(method, { textDocument: { uri }, ...params });
  afterEach(() => {
    assert.deepEqual(client.logged, [], 'no fault');
    client.close();
  });

  it('answer empty for what is not open and for schemes nobody knows, and not for what is open', async () => {
    const uri = await start();
    for (const [method, params, empty] of requests) {
      for (const other of ['file:///lab/other.gloss', 'git:/lab/a.gloss', 'vscode-vfs://x/a.gloss', 'nonsense']) {
        assert.deepEqual(await ask(method, other, params), empty, `${method} ${other}`);
      }
      if (method !== 'textDocument/linkedEditingRange')
        assert.notDeepEqual(await ask(method, uri, params), empty, method);
    }
    const own = await ask<object>(
      'textDocument/linkedEditingRange',
      client.open('c.gloss', 'run "a.csv"\nlet a = 1\nlet b = a\n'),
      { position: { line: 1, character: 4 } },
    );
    assert.ok('ranges' in own);
  });

  it('are offered by the server', async () => {
    await start();
    const { capabilities } = client.initialized;
    for (const name of [
      'definitionProvider',
      'referencesProvider',
      'documentHighlightProvider',
      'documentSymbolProvider',
      'workspaceSymbolProvider',
      'documentLinkProvider',
      'linkedEditingRangeProvider',
    ] as const) {
      assert.ok(capabilities[name], name);
    }
    assert.deepEqual(capabilities.renameProvider, { prepareProvider: true });
    const globs = capabilities.workspace?.fileOperations?.willRename?.filters.map(({ pattern }) => [
      pattern.glob,
      pattern.matches,
    ]);
    assert.deepEqual(globs, [
      ['**/*.gloss', 'file'],
      ['**/*.{csv,txt,tsv,dat,asc}', 'file'],
      ['**/*', 'folder'],
    ]);
  });

  it('lead to a place, and to a place with what it was asked from where the client knows that', async () => {
    const uri = await start();
    const [plain] = await ask<Location[]>('textDocument/definition', uri, { position: onFirst });
    assert.deepEqual(plain, {
      uri: 'file:///lab/m.gloss',
      range: { start: { line: 1, character: 5 }, end: { line: 1, character: 10 } },
    });
    client.close();
    const again = await start({ textDocument: { definition: { linkSupport: true } } });
    const [link] = await ask<LocationLink[]>('textDocument/definition', again, { position: onFirst });
    assert.equal(link.targetUri, plain.uri);
    assert.deepEqual(link.originSelectionRange, { start: { line: 2, character: 8 }, end: { line: 2, character: 13 } });
  });

  it('refuse a rename with a message for people', async () => {
    const uri = await start();
    await assert.rejects(
      ask('textDocument/rename', uri, { position: onFirst, newName: 'Own' }),
      /`Own` is taken: it stands in line 4\./,
    );
    await assert.rejects(ask('textDocument/rename', uri, { position: onFirst, newName: '1st' }), /is no name/);
    await assert.rejects(
      ask('textDocument/prepareRename', uri, { position: { line: 0, character: 1 } }),
      /word of the language/,
    );
  });

  it('rename with versions where the client takes them, else plainly', async () => {
    const edit = async (capabilities: object): Promise<WorkspaceEdit> =>
      ask('textDocument/rename', await start(capabilities), { position: onFirst, newName: 'Erste' });
    const plain = await edit({});
    assert.deepEqual(Object.keys(plain.changes ?? {}).sort(), ['file:///lab/a.gloss', 'file:///lab/m.gloss']);
    client.close();
    const versioned = await edit({ workspace: { workspaceEdit: { documentChanges: true } } });
    assert.deepEqual(
      versioned.documentChanges?.map((change) => ('textDocument' in change ? change.textDocument : null)),
      [
        { uri: 'file:///lab/m.gloss', version: null },
        { uri: 'file:///lab/a.gloss', version: 1 },
      ],
    );
  });

  it('tell the outline as a tree, and flat to a client that knows no trees', async () => {
    const flat = await ask<object[]>('textDocument/documentSymbol', await start(), {});
    assert.ok(flat.every((symbol) => 'location' in symbol) && flat.length === 4);
    client.close();
    const tree = await ask<object[]>(
      'textDocument/documentSymbol',
      await start({ textDocument: { documentSymbol: { hierarchicalDocumentSymbolSupport: true } } }),
      {},
    );
    assert.ok(tree.every((symbol) => 'selectionRange' in symbol));
  });

  it('find symbols of the workspace', async () => {
    await start();
    const found: { name: string }[] = await client.connection.sendRequest('workspace/symbol', { query: 'frst' });
    assert.deepEqual(
      found.map(({ name }) => name),
      ['First'],
    );
  });

  it('keep paths right when files are about to move, in one edit', async () => {
    await start({ workspace: { workspaceEdit: { documentChanges: true } } });
    const move = (oldUri: string, newUri: string): Promise<WorkspaceEdit | null> =>
      client.connection.sendRequest('workspace/willRenameFiles', { files: [{ oldUri, newUri }] });
    const edit = await move('file:///lab/m.gloss', 'file:///lab/methods/m.gloss');
    assert.deepEqual(
      edit?.documentChanges?.map((change) =>
        'edits' in change ? change.edits.map((e) => ('newText' in e ? e.newText : '')) : [],
      ),
      [['"methods/m.gloss"'], ['"methods/m.gloss"']],
    );
    assert.equal(await move('file:///lab/x.csv', 'file:///lab/y.csv'), null);
    assert.equal(await move('git:/lab/m.gloss', 'git:/lab/n.gloss'), null);
  });
});

describe('watched files', () => {
  const registrations = async (capabilities: object): Promise<{ method: string; registerOptions?: object }[]> => {
    const outside = new MemoryOutside(files);
    const all: { method: string; registerOptions?: object }[] = [];
    const client = await startClient(outside, capabilities);
    client.connection.onRequest('client/registerCapability', (params: { registrations: typeof all }) => {
      all.push(...params.registrations);
      return null;
    });
    // Whatever was asked for on being told `initialized` has been asked for once a later request is answered.
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    client.close();
    return all;
  };

  it('are asked for where the client can watch on demand: glosses, data and records of approvals', async () => {
    const all = await registrations({ workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } });
    const watched = all.find(({ method }) => method === 'workspace/didChangeWatchedFiles');
    assert.deepEqual(watched?.registerOptions, {
      watchers: [
        { globPattern: '**/*.gloss' },
        { globPattern: '**/*.{csv,txt,tsv,dat,asc}' },
        { globPattern: '**/*.gloss.approved.json' },
      ],
    });
    assert.deepEqual(await registrations({}), []);
  });

  it('that change are read anew, and one that appears is no longer missing', async () => {
    const outside = new MemoryOutside({ 'm.gloss': files['m.gloss'] });
    const client = await startClient(outside);
    const uri = client.open('a.gloss', 'run "a.csv"\n');
    const links = async (): Promise<unknown[]> =>
      (
        await client.connection.sendRequest<{ target?: string }[]>('textDocument/documentLink', {
          textDocument: { uri },
        })
      ).map(({ target }) => target);
    assert.deepEqual(await links(), [undefined]);
    outside.host.put('a.csv', 'time,temperature,mass\nmin,°C,mg\n0,30,1\n1,40,1\n');
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: 'file:///lab/a.csv', type: 1 }],
    });
    assert.deepEqual(await links(), ['file:///lab/a.csv']);
    const results = await client.workspace.currentResults(uri);
    assert.equal(results?.snapshot.run?.points, 2);
    client.close();
  });

  it('that are open and were saved change nothing that was computed', async () => {
    const client = await startClient(new MemoryOutside(files));
    const uri = client.open('a.gloss', gloss);
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    const before = await client.workspace.currentResults(uri);
    const told = (of: string): Promise<void> =>
      client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: of, type: 2 }] });
    await told(uri);
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    assert.equal((await client.workspace.currentResults(uri))?.revision, before?.revision);
    await told('file:///lab/m.gloss');
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    assert.equal((await client.workspace.currentResults(uri))?.revision, (before?.revision ?? 0) + 1);
    client.close();
  });
});
