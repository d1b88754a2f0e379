import { createHash } from 'node:crypto';
import type { LineEnds } from '../base/host';
import { bomLength, encodingFromStart, encodingNamed, Utf8Check, type EncodingName } from './encoding';
import { LineEndNormaliser } from './lineEnds';
import { pieceDecoder } from './pieceDecoder';

/** The bytes of a file in order. Every call reads from the start and gives pieces that nobody else holds. */
export type RawPieces = () => AsyncIterable<Uint8Array>;

export interface DecodedText {
  readonly encoding: EncodingName;
  readonly bom: boolean;
  readonly identity: string;
  readonly size: number;
  readonly lineEnds: LineEnds;
  chunks(): AsyncIterable<Uint8Array>;
}

/** Bytes that are looked at to tell the encoding. */
const startBytes = 4096;

/**
 * Decodes a file to UTF-8 with LF line ends and hashes that text (SHA-256, hex).
 *
 * With `hold` the decoded pieces are kept and the file is read once: each raw piece is given up as soon as it is decoded,
 * so the file is never held twice. Without, nothing is kept and `chunks` reads and decodes again.
 * `null`: the encoding that was told is unknown.
 */
export async function decodedText(
  raw: RawPieces,
  told: string | undefined,
  hold: boolean,
): Promise<DecodedText | null> {
  const named = told === undefined ? null : encodingNamed(told);
  if (told !== undefined && named === null) return null;
  const held: Uint8Array[] | null = hold ? [] : null;
  const check = new Utf8Check();
  let start: Uint8Array = new Uint8Array(0);
  let known: EncodingName | null = named;
  for await (const piece of raw()) {
    if (start.length < startBytes) {
      start = Buffer.concat([start, piece.subarray(0, startBytes - start.length)]);
      known = named ?? encodingFromStart(start)?.name ?? null;
    }
    const maybeUtf8 = known === null || known === 'utf-8' || start.length < startBytes;
    if (held === null && !maybeUtf8) break;
    held?.push(piece);
    if (maybeUtf8) check.add(piece);
  }
  const encoding = known ?? (check.ok ? 'utf-8' : 'latin-1');
  const bom = bomLength(start, encoding);
  const repair = encoding === 'utf-8' && !check.ok;

  const hash = createHash('sha256');
  const ends = new LineEndNormaliser();
  let size = 0;
  const take = (piece: Uint8Array): void => {
    hash.update(piece);
    size += piece.length;
  };
  if (held !== null) {
    await decodeInPlace(held, encoding, bom, repair, ends);
    held.forEach(take);
  } else for await (const piece of decode(raw(), encoding, bom, repair, ends)) take(piece);

  return {
    encoding,
    bom: bom > 0,
    identity: hash.digest('hex'),
    size,
    lineEnds: ends.finish(),
    async *chunks() {
      if (held !== null) yield* held;
      else yield* decode(raw(), encoding, bom, repair, new LineEndNormaliser());
    },
  };
}

async function* decode(
  raw: AsyncIterable<Uint8Array>,
  encoding: EncodingName,
  bom: number,
  repair: boolean,
  ends: LineEndNormaliser,
): AsyncIterable<Uint8Array> {
  const decoder = pieceDecoder(encoding, repair);
  let skip = bom;
  for await (const piece of raw) {
    const text = ends.push(decoder.push(skip > 0 ? piece.subarray(skip) : piece));
    skip = Math.max(0, skip - piece.length);
    if (text.length > 0) yield text;
  }
  const rest = ends.push(decoder.finish());
  if (rest.length > 0) yield rest;
}

/** The same on a list: each entry is replaced, so that its raw bytes can be freed before the next is decoded. */
async function decodeInPlace(
  pieces: Uint8Array[],
  encoding: EncodingName,
  bom: number,
  repair: boolean,
  ends: LineEndNormaliser,
): Promise<void> {
  let next = 0;
  let filled = 0;
  async function* given(): AsyncIterable<Uint8Array> {
    while (next < pieces.length) {
      const piece = pieces[next];
      pieces[next++] = new Uint8Array(0);
      yield piece;
    }
  }
  for await (const piece of decode(given(), encoding, bom, repair, ends)) pieces[filled++] = piece;
  pieces.length = filled;
}
