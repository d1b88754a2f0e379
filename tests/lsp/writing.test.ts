import assert from 'node:assert/strict';
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  PublishDiagnosticsParams,
  SignatureHelp,
  TextDocumentEdit,
} from 'vscode-languageserver-protocol';
import { inventedFiles, inventedHead } from '../features/support/invented';
import { startClient, type TestClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

const gloss = `${inventedHead}step First 250..420 °C\nstep Second 400..560 °C\nlet x = mean(First.\n`;
const unknown = ['file:///lab/other.gloss', 'git:/lab/a.gloss', 'untitled:x', 'vscode-vfs://host/a.gloss'];
const behindPoint = { line: 6, character: 'let x = mean(First.'.length };

const literals = { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } };
const able = {
  textDocument: {
    codeAction: literals,
    completion: { completionItem: { documentationFormat: ['markdown' as const], labelDetailsSupport: true } },
  },
  workspace: { workspaceEdit: { documentChanges: true } },
};

async function opened(capabilities: object = able): Promise<TestClient & { readonly uri: string }> {
  const client = await startClient(new MemoryOutside(inventedFiles), capabilities);
  const uri = client.open('a.gloss', gloss);
  while ((await client.workspace.currentResults(uri)) === null) await new Promise(setImmediate);
  return { ...client, uri };
}

describe('completion over the protocol', () => {
  it('answers with values, resolves what is looked at, and knows nothing of what is not open', async () => {
    const client = await opened();
    assert.equal(client.initialized.capabilities.completionProvider?.resolveProvider, true);
    const ask = (uri: string): Promise<CompletionList> =>
      client.connection.sendRequest('textDocument/completion', { textDocument: { uri }, position: behindPoint });
    const { items } = await ask(client.uri);
    const loss = items.find((i) => i.label === 'loss');
    assert.match(loss!.labelDetails!.description!, / ± .* % \(initial\)/);
    const resolved: CompletionItem = await client.connection.sendRequest('completionItem/resolve', loss!);
    assert.match((resolved.documentation as { value: string }).value, /ISO 11358-1/);
    for (const uri of unknown) assert.deepEqual(await ask(uri), { isIncomplete: false, items: [] });
    assert.deepEqual(client.logged, []);
    client.close();
  });
});

describe('signature help over the protocol', () => {
  it('answers with the innermost form, and nothing for what is not open', async () => {
    const client = await opened();
    const ask = (uri: string): Promise<SignatureHelp | null> =>
      client.connection.sendRequest('textDocument/signatureHelp', { textDocument: { uri }, position: behindPoint });
    const help = await ask(client.uri);
    assert.equal(help?.signatures[0]?.label, 'mean(x, …)');
    assert.equal(help?.activeParameter, 0);
    for (const uri of unknown) assert.equal(await ask(uri), null);
    assert.deepEqual(client.logged, []);
    client.close();
  });
});

describe('code actions over the protocol', () => {
  const at = { start: { line: 4, character: 12 }, end: { line: 4, character: 12 } };

  it('mend what a diagnostic says, in the version it says it of, and nothing in what is not open', async () => {
    const client = await startClient(new MemoryOutside(inventedFiles), able);
    const pushed = new Promise<PublishDiagnosticsParams>((done) =>
      client.connection.onNotification('textDocument/publishDiagnostics', done),
    );
    const uri = client.open('a.gloss', gloss, 3);
    const { diagnostics } = await pushed;
    const held = diagnostics.filter((d) => d.code === 'window-overlap');
    const ask = (of: string): Promise<CodeAction[]> =>
      client.connection.sendRequest('textDocument/codeAction', {
        textDocument: { uri: of },
        range: at,
        context: { diagnostics: held },
      });
    const fix = (await ask(uri)).find((a) => a.title === 'Move the end to 410 °C');
    const [change] = fix!.edit!.documentChanges as TextDocumentEdit[];
    assert.equal(change?.textDocument.version, 3);
    assert.deepEqual(
      fix?.diagnostics?.map((d) => d.code),
      ['window-overlap'],
    );
    for (const other of unknown) assert.deepEqual(await ask(other), []);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('are not sent to a client that reads commands only', async () => {
    const client = await opened({});
    const actions = await client.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri: client.uri },
      range: at,
      context: { diagnostics: [] },
    });
    assert.deepEqual(actions, []);
    client.close();
  });

  it('are announced with their kinds', async () => {
    const client = await opened();
    const { codeActionProvider } = client.initialized.capabilities;
    assert.deepEqual(codeActionProvider, {
      codeActionKinds: ['quickfix', 'refactor.rewrite', 'source.fixAll.thermogloss'],
    });
    client.close();
  });
});
