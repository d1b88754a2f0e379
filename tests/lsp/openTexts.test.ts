import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { PositionEncoding } from '../../server/src/features/positions';
import { OpenTexts } from '../../server/src/lsp/openTexts';
import { startClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

const uri = 'file:///lab/a.gloss';
const pieces = [
  '°',
  'µ',
  '😀',
  'e\u0301',
  '試',
  'a',
  ' ',
  '"',
  '\n',
  '\r\n',
  '\r',
  'step A 1..2 °C\n',
  '  span 5 K\r\n',
];
const texts = fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((parts) => parts.join(''));
/** Two places of the text as shares of its length, and what is put between them. */
const drawn = fc.array(fc.tuple(fc.nat(1000), fc.nat(1000), texts), { minLength: 1, maxLength: 5 });

/** The next place at or before an offset that a position can name: not within CRLF or a pair of surrogates. */
function whole(text: string, offset: number): number {
  const inside = (text[offset] === '\n' && text[offset - 1] === '\r') || /[\udc00-\udfff]/.test(text[offset] ?? '');
  return inside ? offset - 1 : offset;
}

function positionAt(text: string, offset: number, encoding: PositionEncoding) {
  const document = TextDocument.create(uri, 'gloss', 1, text);
  const position = document.positionAt(offset);
  if (encoding === 'utf-16') return position;
  const start = document.offsetAt({ line: position.line, character: 0 });
  return { line: position.line, character: Buffer.byteLength(text.slice(start, offset)) };
}

describe('a text that is open', () => {
  for (const encoding of ['utf-16', 'utf-8'] as const) {
    it(`is the same after each of 500 drawn bursts of changes as after whole texts (${encoding})`, () => {
      fc.assert(
        fc.property(fc.boolean(), texts, drawn, (bom, first, edits) => {
          const open = new OpenTexts();
          open.encoding = encoding;
          let text = (bom ? '\ufeff' : '') + first;
          open.open(uri, 1, text);
          const changes: TextDocumentContentChangeEvent[] = [];
          for (const [a, b, by] of edits) {
            const places = [a, b]
              .map((share) => whole(text, Math.round((share / 1000) * text.length)))
              .sort((x, y) => x - y);
            const [start, end] = places;
            changes.push({
              range: { start: positionAt(text, start, encoding), end: positionAt(text, end, encoding) },
              text: by,
            });
            text = text.slice(0, start) + by + text.slice(end);
          }
          const changed = open.change(uri, 2, changes)!;
          assert.equal(changed.text, text);
          assert.equal(open.change(uri, 3, [{ text }])!.text, text);
          // Positions of the new text are those of one that was opened so.
          assert.deepEqual(changed.positions.all(), open.open(uri, 4, text).positions.all());
        }),
        { numRuns: 500, seed: 17 },
      );
    });
  }

  it('is not changed where it is not open', () => {
    assert.equal(new OpenTexts().change(uri, 2, [{ text: 'x' }]), null);
  });
});

describe('the encoding of positions', () => {
  const encodings = async (offered?: ('utf-8' | 'utf-16' | 'utf-32')[]): Promise<string | undefined> => {
    const client = await startClient(
      new MemoryOutside({}),
      offered === undefined ? {} : { general: { positionEncodings: offered } },
    );
    client.close();
    return client.initialized.capabilities.positionEncoding;
  };

  it('is UTF-16, and UTF-8 for a client that knows no UTF-16', async () => {
    assert.equal(await encodings(), 'utf-16');
    assert.equal(await encodings(['utf-8', 'utf-16']), 'utf-16');
    assert.equal(await encodings(['utf-32', 'utf-8']), 'utf-8');
  });

  it('in UTF-8 reaches answers and changes', async () => {
    const client = await startClient(new MemoryOutside({}), { general: { positionEncodings: ['utf-8'] } });
    const line = '  note "35 °C, 5 µm 😀"';
    const opened = client.open('a.gloss', `run "a.csv"\n${line}\nlet Größe = 1\nlet y = 2 * Größe + 1\n`);
    const rename = await client.connection.sendRequest<{ range: object; placeholder: string }>(
      'textDocument/prepareRename',
      {
        textDocument: { uri: opened },
        position: { line: 3, character: 14 },
      },
    );
    // Ö and ß are two bytes each in UTF-8.
    assert.deepEqual(rename, {
      range: { start: { line: 3, character: 12 }, end: { line: 3, character: 19 } },
      placeholder: 'Größe',
    });
    const at = Buffer.byteLength('  note "35 °C, 5 µm 😀');
    await client.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: opened, version: 2 },
      contentChanges: [
        { range: { start: { line: 1, character: at - 4 }, end: { line: 1, character: at } }, text: '!' },
      ],
    });
    await client.connection.sendRequest('workspace/symbol', { query: '' });
    assert.equal(client.workspace.texts.get(opened)?.text.split('\n')[1], '  note "35 °C, 5 µm !"');
    assert.deepEqual(client.logged, []);
    client.close();
  });
});
