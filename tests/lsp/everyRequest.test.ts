import assert from 'node:assert/strict';
import { startClient, type TestClient } from './support/client';
import { lossRun } from './support/lossRun';
import { MemoryOutside } from './support/memoryOutside';

const position = { line: 4, character: 6 };
const behindLet = { line: 4, character: 13 };
const range = { start: { line: 0, character: 0 }, end: { line: 7, character: 0 } };
const options = { tabSize: 2, insertSpaces: true };
const files = { 'a.csv': lossRun(330, 121), 'm.gloss': 'method "M"\nstep First 200..450 °C\n' };
const gloss = `run "a.csv"
  mass 10.00 mg

method "m.gloss"
let share = First.loss / 2
let twice = 2 * share
step  Own 330..560 °C
`;

/** Requests of LSP 3.17 for one document, by the ability that offers each. */
const requests: Readonly<Record<string, readonly (readonly [method: string, params: object])[]>> = {
  codeActionProvider: [['textDocument/codeAction', { range, context: { diagnostics: [] } }]],
  codeLensProvider: [['textDocument/codeLens', {}]],
  completionProvider: [['textDocument/completion', { position: behindLet }]],
  definitionProvider: [['textDocument/definition', { position: behindLet }]],
  diagnosticProvider: [['textDocument/diagnostic', {}]],
  documentFormattingProvider: [['textDocument/formatting', { options }]],
  documentHighlightProvider: [['textDocument/documentHighlight', { position }]],
  documentLinkProvider: [['textDocument/documentLink', {}]],
  documentOnTypeFormattingProvider: [
    ['textDocument/onTypeFormatting', { position: { line: 2, character: 0 }, ch: '\n', options }],
  ],
  documentRangeFormattingProvider: [['textDocument/rangeFormatting', { range, options }]],
  documentSymbolProvider: [['textDocument/documentSymbol', {}]],
  foldingRangeProvider: [['textDocument/foldingRange', {}]],
  hoverProvider: [['textDocument/hover', { position }]],
  inlayHintProvider: [['textDocument/inlayHint', { range }]],
  linkedEditingRangeProvider: [['textDocument/linkedEditingRange', { position }]],
  referencesProvider: [['textDocument/references', { position, context: { includeDeclaration: true } }]],
  renameProvider: [
    ['textDocument/prepareRename', { position }],
    ['textDocument/rename', { position, newName: 'other' }],
  ],
  selectionRangeProvider: [['textDocument/selectionRange', { positions: [position] }]],
  semanticTokensProvider: [
    ['textDocument/semanticTokens/full', {}],
    ['textDocument/semanticTokens/full/delta', { previousResultId: 'x' }],
    ['textDocument/semanticTokens/range', { range }],
  ],
  signatureHelpProvider: [['textDocument/signatureHelp', { position }]],
};

/** Abilities that are no request for one document. */
const others = ['textDocumentSync', 'positionEncoding', 'workspace', 'workspaceSymbolProvider', 'experimental'];

/** No answer says more than this of a text that nobody opened. */
function isEmpty(answer: unknown): boolean {
  if (answer === null) return true;
  if (Array.isArray(answer)) return answer.length === 0;
  const { items, data, edits } = answer as { items?: unknown[]; data?: unknown[]; edits?: unknown[] };
  return [items, data, edits].some((list) => list?.length === 0);
}

describe('every request for a document that the server offers', () => {
  let client: TestClient;
  beforeEach(async () => {
    // What a client lacks is not offered, or answered with nothing.
    const codeAction = { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor'] } } };
    client = await startClient(new MemoryOutside(files), { textDocument: { diagnostic: {}, codeAction } });
  });
  afterEach(() => client.close());

  it('is one of those asked here, and each of those is offered', () => {
    const offered = Object.keys(client.initialized.capabilities).filter((name) => !others.includes(name));
    assert.deepEqual(offered.sort(), Object.keys(requests).sort());
  });

  it('is answered with nothing, and never with an error, for what is not open and for schemes nobody knows', async () => {
    const asked = Object.values(requests).flat();
    for (const uri of ['file:///lab/other.gloss', 'git:/lab/a.gloss?HEAD', 'vscode-vfs://x/a.gloss', 'a:b', 'nonsense'])
      for (const [method, params] of asked) {
        const answer: unknown = await client.connection.sendRequest(method, { textDocument: { uri }, ...params });
        assert.ok(isEmpty(answer), `${method} ${uri}: ${JSON.stringify(answer)}`);
      }
    assert.deepEqual(client.logged, []);
  });

  it('is answered with something for a text that is open, but for code lenses, which are off', async () => {
    const uri = client.open('a.gloss', gloss);
    await client.workspace.currentResults(uri);
    const silent: string[] = [];
    for (const [method, params] of Object.values(requests).flat()) {
      const answer: unknown = await client.connection.sendRequest(method, { textDocument: { uri }, ...params });
      if (isEmpty(answer)) silent.push(method);
    }
    assert.deepEqual(silent, ['textDocument/codeLens']);
    assert.deepEqual(client.logged, []);
  });
});
