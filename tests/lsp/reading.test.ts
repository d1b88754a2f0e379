import assert from 'node:assert/strict';
import type { CodeLens, Hover, InlayHint, SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver-protocol';
import { inventedFiles, inventedHead } from '../features/support/invented';
import { coalesced } from '../../server/src/lsp/handlers/refresh';
import { startClient, type TestClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

const gloss = `${inventedHead}step First 200..420 °C\n`;
const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
const onFirst = { line: 4, character: 6 };

/** Documents that are not there, or of a scheme that is none of ours. */
const unknown = ['file:///lab/other.gloss', 'git:/lab/a.gloss', 'untitled:x', 'vscode-vfs://host/a.gloss'];

async function opened(capabilities = {}): Promise<TestClient & { readonly uri: string }> {
  const client = await startClient(new MemoryOutside(inventedFiles), capabilities);
  const uri = client.open('a.gloss', gloss);
  await settled(client, uri);
  return { ...client, uri };
}

/** The notification travels: the server may not know the document yet. */
async function settled(client: TestClient, uri: string): Promise<void> {
  while ((await client.workspace.currentResults(uri)) === null) await new Promise(setImmediate);
}

describe('hover over the protocol', () => {
  it('answers in the format of the client, and nothing for what is not open', async () => {
    const client = await opened({ textDocument: { hover: { contentFormat: ['plaintext', 'markdown'] } } });
    const ask = (uri: string): Promise<Hover | null> =>
      client.connection.sendRequest('textDocument/hover', { textDocument: { uri }, position: onFirst });
    const shown = await ask(client.uri);
    assert.match((shown?.contents as { value: string }).value, /^\*\*step First\*\*/);
    for (const uri of unknown) assert.equal(await ask(uri), null);
    assert.deepEqual(client.logged, []);
    client.close();
    const plain = await opened();
    const words: Hover = await plain.connection.sendRequest('textDocument/hover', {
      textDocument: { uri: plain.uri },
      position: onFirst,
    });
    assert.match((words.contents as { value: string }).value, /^step First\n/);
    plain.close();
  });
});

describe('inlay hints over the protocol', () => {
  const ask = (client: TestClient, uri: string): Promise<InlayHint[]> =>
    client.connection.sendRequest('textDocument/inlayHint', { textDocument: { uri }, range: whole });

  it('come without tooltips, which are told when they are looked at', async () => {
    const client = await opened({ textDocument: { inlayHint: { resolveSupport: { properties: ['tooltip'] } } } });
    const [hint] = await ask(client, client.uri);
    assert.ok(hint !== undefined && hint.tooltip === undefined);
    const resolved: InlayHint = await client.connection.sendRequest('inlayHint/resolve', hint);
    assert.match((resolved.tooltip as { value: string }).value, /^step First/);
    for (const uri of unknown) assert.deepEqual(await ask(client, uri), []);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('come with tooltips for a client that does not ask again', async () => {
    const client = await opened();
    const [hint] = await ask(client, client.uri);
    assert.match((hint?.tooltip as { value: string }).value, /^step First/);
    client.close();
  });

  it('are asked for again once results are there, by a client that can be told', async () => {
    const client = await startClient(new MemoryOutside(inventedFiles), {
      workspace: { inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
    });
    const asked = { hints: 0, lenses: 0 };
    client.connection.onRequest('workspace/inlayHint/refresh', () => void (asked.hints += 1));
    client.connection.onRequest('workspace/codeLens/refresh', () => void (asked.lenses += 1));
    const uri = client.open('a.gloss', gloss);
    await settled(client, uri);
    // The question travels behind the results; an answer to another one comes behind it.
    await ask(client, uri);
    assert.deepEqual(asked, { hints: 1, lenses: 1 });
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('are asked for at most twice for a burst of results, and never too seldom', async () => {
    let asked = 0;
    const answers: (() => void)[] = [];
    const ask = (): Promise<void> => {
      asked += 1;
      return new Promise((done) => answers.push(done));
    };
    const refresh = coalesced(ask, () => assert.fail());
    for (let i = 0; i < 50; i += 1) refresh();
    assert.equal(asked, 1);
    answers[0]!();
    await new Promise(setImmediate);
    assert.equal(asked, 2);
    answers[1]!();
    await new Promise(setImmediate);
    assert.equal(asked, 2);
    refresh();
    assert.equal(asked, 3);
  });

  it('are asked for again after a client failed to answer', async () => {
    const faults: unknown[] = [];
    let asked = 0;
    const refresh = coalesced(
      () => {
        asked += 1;
        return Promise.reject(new Error('closed'));
      },
      (error) => faults.push(error),
    );
    refresh();
    await new Promise(setImmediate);
    refresh();
    await new Promise(setImmediate);
    assert.equal(asked, 2);
    assert.equal(faults.length, 2);
  });
});

describe('code lenses over the protocol', () => {
  it('are none by default and for what is not open', async () => {
    const client = await opened();
    const ask = (uri: string): Promise<CodeLens[]> =>
      client.connection.sendRequest('textDocument/codeLens', { textDocument: { uri } });
    for (const uri of [client.uri, ...unknown]) assert.deepEqual(await ask(uri), []);
    client.close();
  });

  it('are there once the setting asks for them', async () => {
    const client = await opened();
    await client.connection.sendNotification('workspace/didChangeConfiguration', {
      settings: { thermogloss: { lenses: true } },
    });
    const lenses: CodeLens[] = await client.connection.sendRequest('textDocument/codeLens', {
      textDocument: { uri: client.uri },
    });
    assert.equal(lenses[0]?.command?.command, 'thermogloss.showCurves');
    client.close();
  });
});

describe('semantic tokens over the protocol', () => {
  it('are told in full, for a range, and as what changed since the last answer', async () => {
    const client = await opened();
    const { capabilities } = client.initialized;
    assert.ok((capabilities.semanticTokensProvider?.legend.tokenTypes.length ?? 0) > 5);
    const textDocument = { uri: client.uri };
    const full: SemanticTokens = await client.connection.sendRequest('textDocument/semanticTokens/full', {
      textDocument,
    });
    const range: SemanticTokens = await client.connection.sendRequest('textDocument/semanticTokens/range', {
      textDocument,
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } },
    });
    assert.deepEqual(range.data, full.data.slice(0, range.data.length));
    client.change(client.uri, 2, `${gloss}step Second 440..560 °C\n`);
    const delta: SemanticTokensDelta = await client.connection.sendRequest('textDocument/semanticTokens/full/delta', {
      textDocument,
      previousResultId: full.resultId,
    });
    const made = [...full.data];
    for (const { start, deleteCount, data } of delta.edits) made.splice(start, deleteCount, ...(data ?? []));
    const again: SemanticTokens = await client.connection.sendRequest('textDocument/semanticTokens/full', {
      textDocument,
    });
    assert.deepEqual(made, again.data);
    assert.ok(made.length > full.data.length);
    const stranger: SemanticTokens = await client.connection.sendRequest('textDocument/semanticTokens/full/delta', {
      textDocument,
      previousResultId: 'another',
    });
    assert.deepEqual(stranger.data, again.data);
    client.close();
  });

  it('are none for what is not open', async () => {
    const client = await opened();
    for (const uri of unknown) {
      const textDocument = { uri };
      assert.deepEqual(await client.connection.sendRequest('textDocument/semanticTokens/full', { textDocument }), {
        data: [],
      });
      assert.deepEqual(
        await client.connection.sendRequest('textDocument/semanticTokens/range', { textDocument, range: whole }),
        { data: [] },
      );
    }
    assert.deepEqual(client.logged, []);
    client.close();
  });
});
