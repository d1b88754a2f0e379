import type { EncodingName } from './encoding';

/** Turns the bytes of a file into UTF-8, piece by piece. A piece may be changed in place; the result may share it. */
export interface PieceDecoder {
  push(piece: Uint8Array): Uint8Array;
  /** What was held back at the end of the file. */
  finish(): Uint8Array;
}

const nothing = new Uint8Array(0);

/** `repair`: bytes that are no UTF-8 become U+FFFD (only where the user told the encoding). */
export function pieceDecoder(encoding: EncodingName, repair: boolean): PieceDecoder {
  if (encoding === 'latin-1') return { push: latin1ToUtf8, finish: () => nothing };
  if (encoding === 'utf-8') {
    return repair ? textDecoding('utf-8', (piece) => piece) : { push: (piece) => piece, finish: () => nothing };
  }
  return textDecoding('utf-16le', encoding === 'utf-16be' ? swapBytes() : (piece) => piece);
}

function textDecoding(label: string, prepare: (piece: Uint8Array) => Uint8Array): PieceDecoder {
  const decoder = new TextDecoder(label, { ignoreBOM: true });
  return {
    push: (piece) => Buffer.from(decoder.decode(prepare(piece), { stream: true }), 'utf8'),
    finish: () => Buffer.from(decoder.decode(), 'utf8'),
  };
}

/** Big endian to little endian; an odd last byte waits for its partner. */
function swapBytes(): (piece: Uint8Array) => Uint8Array {
  let odd: Uint8Array = nothing;
  return (piece) => {
    const all =
      odd.length > 0 ? Buffer.concat([odd, piece]) : Buffer.from(piece.buffer, piece.byteOffset, piece.length);
    const whole = all.length & ~1;
    odd = Uint8Array.from(all.subarray(whole));
    return all.subarray(0, whole).swap16();
  };
}

function latin1ToUtf8(piece: Uint8Array): Uint8Array {
  let high = 0;
  for (let at = 0; at < piece.length; at++) high += piece[at] >> 7;
  if (high === 0) return piece;
  const out = new Uint8Array(piece.length + high);
  let to = 0;
  for (let at = 0; at < piece.length; at++) {
    const byte = piece[at];
    if (byte < 0x80) out[to++] = byte;
    else {
      out[to++] = 0xc0 | (byte >> 6);
      out[to++] = 0x80 | (byte & 0x3f);
    }
  }
  return out;
}
