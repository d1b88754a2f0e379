import assert from 'node:assert/strict';
import fc from 'fast-check';
import { TextMirror } from '../../client/src/server/textMirror';

const uri = 'untitled:b';
const line = fc.constantFrom('step A 1..2 °C', '', '\t# µ 𝛥 ‰', 'let x = 1', 'é́');

function position(text: string, offset: number): { line: number; character: number } {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length };
}

describe('the mirror of open texts', () => {
  it('holds after random edits what splicing the string gives (UTF-16 positions of LSP 3.17)', () => {
    const edit = fc.record({ from: fc.nat(200), length: fc.nat(12), text: fc.array(line, { maxLength: 3 }) });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), fc.array(edit, { maxLength: 20 }), (lines, edits) => {
        let text = lines.join('\n');
        const mirror = new TextMirror();
        const notify = (method: string, params: object): boolean => mirror.take({ jsonrpc: '2.0', method, params });
        notify('textDocument/didOpen', { textDocument: { uri, languageId: 'gloss', version: 0, text } });
        edits.forEach((e, i) => {
          const start = Math.min(e.from, text.length);
          const end = Math.min(start + e.length, text.length);
          const range = { start: position(text, start), end: position(text, end) };
          const inserted = e.text.join('\n');
          notify('textDocument/didChange', {
            textDocument: { uri, version: i + 1 },
            contentChanges: [{ range, text: inserted }],
          });
          text = text.slice(0, start) + inserted + text.slice(end);
        });
        const [opening] = mirror.opening();
        const document = (opening!.params as { textDocument: { text: string; version: number } }).textDocument;
        assert.equal(document.text, text);
        assert.equal(document.version, edits.length);
      }),
    );
  });

  it('takes nothing but opening, changing and closing', () => {
    const mirror = new TextMirror();
    assert.equal(mirror.take({ jsonrpc: '2.0', method: 'textDocument/didSave', params: {} }), false);
    assert.deepEqual(mirror.opening(), []);
  });
});
