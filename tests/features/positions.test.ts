import assert from 'node:assert/strict';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { TextPositions } from '../../server/src/features/positions';
import { occurrenceAt } from '../../server/src/features/names/occurrences';
import { parse } from '../../server/src/language/syntax/parse';

// What a position is: LSP 3.17, "Text Documents" and `PositionEncodingKind`. UTF-16 is compared with the protocol's own
// reference of a document (vscode-languageserver-textdocument), UTF-8 with Node's encoder.
const awkward = ['°', 'µ', '⁻', '²', '😀', '👩🏽\u200d🔬', 'e\u0301', 'Щ', '試', '\u00a0', 'x'];
const ends = ['\n', '\r\n', '\r'];

function reference(text: string): TextDocument {
  return TextDocument.create('file:///a.gloss', 'gloss', 1, text);
}

describe('positions', () => {
  it('right behind °, µ, raised digits, emoji, combining marks and other scripts are those of the protocol', () => {
    for (const sign of awkward) {
      for (const end of ends) {
        const text = `run "a.csv"${end}step A 1..2 ${sign}C # ${sign}${sign}${end}${sign}`;
        const document = reference(text);
        const positions = new TextPositions(text);
        const bytes = new TextPositions(text, 'utf-8');
        for (let offset = 0; offset <= text.length; offset += 1) {
          // Between CR and LF nothing can stand.
          if (text[offset] === '\n' && text[offset - 1] === '\r') continue;
          const position = positions.position(offset);
          assert.deepEqual(position, document.positionAt(offset), `${sign} ${offset}`);
          assert.equal(positions.offset(position), offset);
          const { line, character } = bytes.position(offset);
          const before = text.slice(document.offsetAt({ line, character: 0 }), offset);
          // Half of a pair of surrogates is no character.
          if (/[\ud800-\udbff]$/.test(before)) continue;
          assert.deepEqual([line, character], [position.line, Buffer.byteLength(before)], `${sign} ${offset}`);
          assert.equal(bytes.offset({ line, character }), offset);
        }
      }
    }
  });

  it('end lines at LF, CRLF and CR alike', () => {
    for (const end of ends) {
      const positions = new TextPositions(`a${end}${end}bc`);
      assert.equal(positions.lines, 3);
      assert.deepEqual(positions.all().end, { line: 2, character: 2 });
      assert.deepEqual(positions.lineSpan(0), { start: 0, end: 1 });
    }
  });

  it('count a BOM where the text of the client has one, while offsets do not', () => {
    const text = '\ufeffrun "a.csv"\nlet x = 1\n';
    const positions = new TextPositions(text);
    assert.deepEqual(positions.position(0), { line: 0, character: 1 });
    assert.deepEqual(positions.offset({ line: 0, character: 0 }), 0);
    assert.deepEqual(new TextPositions(text, 'utf-8').position(0), { line: 0, character: 3 });
    const tree = parse(text);
    const [, second] = tree.statements;
    assert.deepEqual(positions.range(second.tokens.get('name')!), {
      start: { line: 1, character: 4 },
      end: { line: 1, character: 5 },
    });
    assert.equal(occurrenceAt(tree, positions.offset({ line: 1, character: 5 }))?.name, 'x');
  });

  it('outside the text are clipped to it, and those behind the end of a line to its end', () => {
    for (const end of ends) {
      const text = `ab${end}µ`;
      const document = reference(text);
      for (const encoding of ['utf-16', 'utf-8'] as const) {
        const positions = new TextPositions(text, encoding);
        assert.equal(positions.raw({ line: 0, character: 99 }), 2);
        assert.equal(positions.raw({ line: 7, character: 0 }), text.length);
        assert.equal(positions.raw({ line: 1, character: 99 }), document.offsetAt({ line: 1, character: 99 }));
      }
    }
  });

  it('of random texts are those of the reference, there and back', () => {
    const texts = fc
      .array(fc.constantFrom(...awkward, ...ends, 'a', ' '), { maxLength: 60 })
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(texts, fc.nat(70), fc.nat(12), fc.nat(20), (text, at, line, character) => {
        const document = reference(text);
        const positions = new TextPositions(text);
        const offset = Math.min(at, text.length);
        if (!(text[offset] === '\n' && text[offset - 1] === '\r'))
          assert.deepEqual(positions.position(offset), document.positionAt(offset));
        assert.equal(positions.raw({ line, character }), document.offsetAt({ line, character }));
      }),
      { numRuns: 1000, seed: 3 },
    );
  });
});
