import assert from 'node:assert/strict';
import type { FoldingRange, SelectionRange, TextEdit } from 'vscode-languageserver-protocol';
import { startClient, type TestClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

const gloss = 'run   "a.csv"\n mass 5 mg\nstep First 1..2 °C\n';
const options = { tabSize: 2, insertSpaces: true };
const whole = { start: { line: 0, character: 0 }, end: { line: 3, character: 0 } };

const requests: readonly (readonly [method: string, params: object])[] = [
  ['textDocument/foldingRange', {}],
  ['textDocument/selectionRange', { positions: [{ line: 1, character: 3 }] }],
  ['textDocument/formatting', { options }],
  ['textDocument/rangeFormatting', { range: whole, options }],
  ['textDocument/onTypeFormatting', { position: { line: 1, character: 0 }, ch: '\n', options }],
];

describe('the text over the protocol', () => {
  let client: TestClient;
  const ask = <R>(method: string, uri: string, params: object): Promise<R> =>
    client.connection.sendRequest(method, { textDocument: { uri }, ...params });
  beforeEach(async () => {
    client = await startClient(new MemoryOutside({}), { textDocument: { foldingRange: { rangeLimit: 1 } } });
  });
  afterEach(() => {
    assert.deepEqual(client.logged, [], 'no fault');
    client.close();
  });

  it('answers empty for what is not open and for schemes nobody knows', async () => {
    client.open('a.gloss', gloss);
    for (const [method, params] of requests) {
      for (const other of ['file:///lab/other.gloss', 'git:/lab/a.gloss', 'nonsense']) {
        assert.deepEqual(await ask(method, other, params), [], `${method} ${other}`);
      }
    }
  });

  it('is offered: folds, selections, layout whole, of ranges and while typing', () => {
    const { capabilities } = client.initialized;
    assert.ok(capabilities.foldingRangeProvider && capabilities.selectionRangeProvider);
    assert.ok(capabilities.documentFormattingProvider && capabilities.documentRangeFormattingProvider);
    assert.deepEqual(capabilities.documentOnTypeFormattingProvider, { firstTriggerCharacter: '\n' });
  });

  it('is folded at most as often as the client wants', async () => {
    const uri = client.open('a.gloss', `${gloss}  span 5 K\n`);
    const folds = await ask<FoldingRange[]>('textDocument/foldingRange', uri, {});
    assert.deepEqual(folds, [{ startLine: 0, endLine: 1 }]);
  });

  it('is selected in growing stretches', async () => {
    const uri = client.open('a.gloss', gloss);
    const [first] = await ask<SelectionRange[]>('textDocument/selectionRange', uri, {
      positions: [{ line: 1, character: 3 }],
    });
    assert.deepEqual(first.range, { start: { line: 1, character: 1 }, end: { line: 1, character: 5 } });
    assert.ok(first.parent?.parent !== undefined);
  });

  it('is laid out by small edits, and indented after a head', async () => {
    const uri = client.open('a.gloss', gloss);
    const edits = await ask<TextEdit[]>('textDocument/formatting', uri, { options });
    assert.deepEqual(edits, [
      { range: { start: { line: 0, character: 3 }, end: { line: 0, character: 6 } }, newText: ' ' },
      { range: { start: { line: 1, character: 0 }, end: { line: 1, character: 1 } }, newText: '  ' },
    ]);
    assert.deepEqual(await ask('textDocument/rangeFormatting', uri, { range: whole, options }), edits);
    const typed = client.open('b.gloss', 'run "a.csv"\n\n');
    assert.deepEqual(
      await ask('textDocument/onTypeFormatting', typed, { position: { line: 1, character: 0 }, ch: '\n', options }),
      [{ range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, newText: '  ' }],
    );
  });
});
