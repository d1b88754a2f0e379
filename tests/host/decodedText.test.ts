import { createHash } from 'node:crypto';
import { strict as assert } from 'node:assert';
import { decodedText, type RawPieces } from '../../server/src/host/decodedText';
import { seeded } from '../support/random';

const text = 'Zeit;Temp./°C;Masse/µg\n0,0;25,10;Größe\n1,0;25,27;±3 €\n\nEnde 𝜃';
const latinText = 'Temp./°C;Masse/µg\n25,1;10,0\n25,3;9,9\nWärme ± 3\n';

function utf16(content: string, bigEndian: boolean, bom: boolean): Buffer {
  const bytes = Buffer.from((bom ? '\ufeff' : '') + content, 'utf16le');
  return bigEndian ? bytes.swap16() : bytes;
}

function pieces(bytes: Uint8Array, size: number): RawPieces {
  return async function* () {
    for (let from = 0; from < bytes.length; from += size) yield Uint8Array.from(bytes.subarray(from, from + size));
  };
}

async function all(chunks: AsyncIterable<Uint8Array>): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const chunk of chunks) parts.push(Uint8Array.from(chunk));
  return Buffer.concat(parts).toString('utf8');
}

const encodings = {
  'utf-8': (content: string) => Buffer.from(content, 'utf8'),
  'utf-8 with a mark': (content: string) => Buffer.from(`\ufeff${content}`, 'utf8'),
  'utf-16le with a mark': (content: string) => utf16(content, false, true),
  'utf-16be with a mark': (content: string) => utf16(content, true, true),
};
const lineEnds = { lf: '\n', crlf: '\r\n', cr: '\r' } as const;

describe('decoding a data file', () => {
  for (const [encoding, encode] of Object.entries(encodings)) {
    for (const [name, end] of Object.entries(lineEnds)) {
      it(`gives the same text and identity for ${encoding} with ${name} line ends, wherever the file is split`, async () => {
        const bytes = encode(text.replaceAll('\n', end));
        // FIPS 180-4 hash of the text as the design page defines it: decoded, mark dropped, line ends as LF.
        const identity = createHash('sha256').update(text, 'utf8').digest('hex');
        for (const size of [1, 2, 3, 7, 1000]) {
          for (const hold of [true, false]) {
            const decoded = await decodedText(pieces(bytes, size), undefined, hold);
            assert.ok(decoded);
            assert.equal(await all(decoded.chunks()), text);
            assert.equal(await all(decoded.chunks()), text, 'a second reading is the same');
            assert.equal(decoded.identity, identity);
            assert.equal(decoded.size, Buffer.byteLength(text));
            assert.equal(decoded.lineEnds, name);
            assert.equal(decoded.encoding, encoding.split(' ')[0]);
            assert.equal(decoded.bom, encoding.includes('mark'));
          }
        }
      });
    }
  }

  it('takes bytes that are no UTF-8 as Latin-1', async () => {
    const bytes = Buffer.from(latinText.replaceAll('\n', '\r\n'), 'latin1');
    for (const size of [1, 5, 1000]) {
      for (const hold of [true, false]) {
        const decoded = await decodedText(pieces(bytes, size), undefined, hold);
        assert.equal(decoded?.encoding, 'latin-1');
        assert.equal(await all(decoded.chunks()), latinText);
      }
    }
  });

  it('finds UTF-16 without a mark by the zero bytes of its digits', async () => {
    const table = 'time,T,m\n0,25.0,10.1\n1,25.2,10.0\n';
    for (const bigEndian of [false, true]) {
      const decoded = await decodedText(pieces(utf16(table, bigEndian, false), 3), undefined, true);
      assert.equal(decoded?.encoding, bigEndian ? 'utf-16be' : 'utf-16le');
      assert.equal(decoded.bom, false);
      assert.equal(await all(decoded.chunks()), table);
    }
  });

  it('follows the encoding it is told, and knows no other names', async () => {
    const bytes = Buffer.from('Masse µ', 'utf8');
    assert.equal(await all((await decodedText(pieces(bytes, 9), 'ISO-8859-1', true))!.chunks()), 'Masse Âµ');
    const broken = await decodedText(pieces(Buffer.from([0x41, 0xff, 0x42]), 2), 'utf8', false);
    assert.equal(await all(broken!.chunks()), 'A\ufffdB');
    assert.equal(await decodedText(pieces(bytes, 9), 'ebcdic', true), null);
  });

  it('names mixed line ends, and none', async () => {
    const mixed = await decodedText(pieces(Buffer.from('a\r\nb\nc\rd'), 1), undefined, true);
    assert.equal(mixed?.lineEnds, 'mixed');
    assert.equal(await all(mixed.chunks()), 'a\nb\nc\nd');
    assert.equal((await decodedText(pieces(Buffer.from('abc'), 2), undefined, true))?.lineEnds, 'none');
    assert.equal((await decodedText(pieces(Buffer.from('a\rb\r'), 2), undefined, true))?.lineEnds, 'cr');
  });

  it('decides on UTF-8 as the whole text would, however its bytes are split', async () => {
    const random = seeded(7);
    for (let round = 0; round < 300; round++) {
      const bytes = Buffer.from('aµ€𝜃'.repeat(1 + random.integer(3)), 'utf8');
      if (random.uniform() < 0.5) bytes[random.integer(bytes.length)] = random.integer(256);
      if (random.uniform() < 0.2) bytes.fill(0x41, 0, random.integer(bytes.length));
      const decoded = await decodedText(pieces(bytes, 1 + random.integer(5)), undefined, round % 2 === 0);
      // The reference is the platform's own strict decoder (WHATWG Encoding Standard).
      let valid = true;
      try {
        new TextDecoder('utf-8', { fatal: true }).decode(bytes);
      } catch {
        valid = false;
      }
      assert.equal(decoded?.encoding, valid ? 'utf-8' : 'latin-1', bytes.toString('hex'));
      const expected = valid ? bytes.toString('utf8') : bytes.toString('latin1');
      assert.equal(await all(decoded.chunks()), expected.replaceAll(/\r\n?/g, '\n'));
    }
  });
});
