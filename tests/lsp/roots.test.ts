import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ClientCapabilities, ConfigurationParams, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import type { Results } from '../../server/src/features/workspace';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { startClient, type TestClient } from './support/client';
import { lossRun } from './support/lossRun';

const gloss = 'run "a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\nstep Second 400..560 °C\n';

describe('root folders on a disk', () => {
  let folder: string;
  let client: TestClient | null = null;

  const put = (name: string, text: string): string => {
    const at = join(folder, name);
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, text);
    return uri(name);
  };
  const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
  /** As the server writes it. */
  const path = (name: string): string => join(folder, name).split(sep).join('/');

  beforeEach(() => {
    folder = realpathSync.native(mkdtempSync(join(tmpdir(), 'gloss-roots-')));
    // The folder itself is nobody's repository.
    for (const name of ['one', 'two', 'one/inner', 'elsewhere']) {
      put(`${name}/a.csv`, lossRun());
      put(`${name}/a.gloss`, gloss);
    }
  });
  afterEach(() => {
    if (client !== null) assert.deepEqual(client.logged, [], 'no fault');
    client?.close();
    client = null;
    rmSync(folder, { recursive: true, force: true });
  });

  async function start(
    folders: readonly string[],
    settings: (scope: string) => object | null = () => null,
    capabilities: ClientCapabilities = { workspace: { configuration: true } },
  ): Promise<TestClient> {
    client = await startClient(new NodeOutside(), capabilities, folders);
    client.connection.onRequest('workspace/configuration', ({ items }: ConfigurationParams) =>
      items.map(({ scopeUri, section }) => (section === 'thermogloss' ? settings(scopeUri ?? '') : null)),
    );
    return client;
  }

  /** Results of a document once the server knows of all that was sent before. */
  async function resultsOf(of: TestClient, document: string): Promise<Results | null> {
    await of.connection.sendRequest('workspace/symbol', { query: '' });
    return of.workspace.currentResults(document);
  }

  /** How many findings of the document are told once its results are there with its settings. */
  async function told(of: TestClient, document: string, wanted: (count: number) => boolean): Promise<number> {
    return new Promise((done) => {
      of.connection.onNotification('textDocument/publishDiagnostics', (p: PublishDiagnosticsParams) => {
        if (p.uri === document && wanted(p.diagnostics.length)) done(p.diagnostics.length);
      });
      of.open(document, gloss);
    });
  }

  it('have each their own settings', async () => {
    const most = (scope: string): object => ({ mostFindings: scope.includes('/one/') ? 1 : 200 });
    const running = await start([uri('one'), uri('two')], most);
    assert.equal(await told(running, uri('one/a.gloss'), (n) => n === 1), 1);
    assert.ok((await told(running, uri('two/a.gloss'), (n) => n > 1)) > 1);
  });

  it('hold their files each for itself: a gloss reads nothing of the other, nor outside both', async () => {
    const running = await start([uri('one'), uri('two')]);
    for (const file of ['../two/a.csv', '../elsewhere/a.csv', '../../../../../../../../etc/hostname']) {
      const at = running.open(uri('one/x.gloss'), `run "${file}"\n`, 1);
      const results = await resultsOf(running, at);
      assert.deepEqual(
        results?.snapshot.findings.map(({ code }) => code).filter((code) => code.startsWith('file')),
        ['file-outside-workspace'],
        file,
      );
      await running.connection.sendNotification('textDocument/didClose', { textDocument: { uri: at } });
    }
  });

  it('nested hold a file in the inner one, whatever their order', async () => {
    for (const folders of [
      [uri('one'), uri('one/inner')],
      [uri('one/inner'), uri('one')],
    ]) {
      const outside = new NodeOutside();
      outside.setRoots(folders);
      assert.equal(outside.project(path('one/inner/a.gloss')).root, path('one/inner'));
      assert.equal(outside.project(path('one/a.gloss')).root, path('one'));
      // A folder whose name only begins alike is not inside.
      assert.equal(outside.project(path('one/inner2/a.gloss')).root, path('one'));
      assert.equal(outside.project(path('one2/a.gloss')).root, path('one2'));
      assert.deepEqual(await outside.glossFiles(), [path('one/a.gloss'), path('one/inner/a.gloss')]);
    }
    // A gloss of the inner root cannot reach the outer one.
    const running = await start([uri('one'), uri('one/inner')]);
    const at = running.open(uri('one/inner/x.gloss'), 'run "../a.csv"\n');
    const results = await resultsOf(running, at);
    assert.ok(results?.snapshot.findings.some(({ code }) => code === 'file-outside-workspace'));
  });

  it('may not hold a file at all: it is evaluated in its own folder', async () => {
    const running = await start([uri('one')]);
    const at = running.open(uri('elsewhere/a.gloss'), gloss);
    const results = await resultsOf(running, at);
    assert.equal(results?.snapshot.run?.points, 601);
    assert.ok(results.snapshot.results.some(({ id, value }) => id === 'First.loss' && value !== null));
  });

  it('may be missing: one file alone is evaluated, and no gloss of a disk is searched', async () => {
    const running = await start([]);
    const at = running.open(uri('two/a.gloss'), gloss);
    const results = await resultsOf(running, at);
    assert.equal(results?.snapshot.run?.points, 601);
    assert.deepEqual(
      (await running.workspace.glosses()).map((g) => g.uri),
      [at],
    );
  });

  it('come and go: what is open then belongs to the folder that holds it, as it stands in the editor', async () => {
    const running = await start([uri('elsewhere')], () => null, { workspace: { workspaceFolders: true } });
    const method = running.open(put('one/m.gloss', 'method "on disk"\n'), 'method "M"\nstep Early 200..450 °C\n');
    const at = running.open(uri('one/a.gloss'), 'run "a.csv"\nmethod "m.gloss"\n');
    running.connection.onRequest('workspace/workspaceFolders', () => [{ uri: uri('one'), name: 'one' }]);
    await running.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: [], removed: [] },
    });
    await running.connection.sendRequest('workspace/symbol', { query: '' });
    const results = await resultsOf(running, at);
    assert.ok(
      results?.snapshot.results.some(({ id }) => id === 'Early.loss'),
      'the method as it stands in the editor',
    );
    assert.deepEqual(
      (await running.workspace.glosses()).map((g) => g.uri).sort(),
      [at, uri('one/inner/a.gloss'), method].sort(),
    );
  });

  it('give a new text without a file its place: the first folder; or none, where names and layout still work', async () => {
    const running = await start([uri('two'), uri('one/inner')]);
    const at = running.open('untitled:Untitled-1', gloss);
    assert.equal((await resultsOf(running, at))?.snapshot.run?.points, 601);
    const [found] = await running.connection.sendRequest<{ uri: string }[]>('textDocument/references', {
      textDocument: { uri: at },
      position: { line: 2, character: 6 },
      context: { includeDeclaration: true },
    });
    assert.equal(found.uri, at, 'named by its own address');
    client?.close();
    const alone = await start([]);
    const lonely = alone.open('untitled:Untitled-1', `${gloss}let  x = First.loss\n`);
    const edits = await alone.connection.sendRequest<object[]>('textDocument/formatting', {
      textDocument: { uri: lonely },
      options: { tabSize: 2, insertSpaces: true },
    });
    assert.equal(edits.length > 0, true);
    const results = await resultsOf(alone, lonely);
    assert.ok(results?.snapshot.findings.some(({ code }) => code === 'file-missing'));
  });

  it('count a new text that will become a file to the folder of that file', () => {
    const outside = new NodeOutside();
    outside.setRoots([uri('two')]);
    const named = path('one/new ä.gloss');
    assert.equal(outside.pathOf(`untitled:${encodeURI(named)}`), named);
    for (const other of ['git:/x.gloss', 'vscode-vfs://host/x.gloss', 'nonsense', 'file://%', 'untitled:%']) {
      assert.equal(outside.pathOf(other), null, other);
    }
  });
});
