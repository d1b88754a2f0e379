import { isUtf8 } from 'node:buffer';
import type { HostFile } from '../base/host';

export type EncodingName = 'utf-8' | 'utf-16le' | 'utf-16be' | 'latin-1';

export interface FoundEncoding {
  readonly name: EncodingName;
  /** Bytes of the byte order mark at the start of the file. */
  readonly bom: number;
}

const written: Readonly<Record<string, EncodingName>> = {
  utf8: 'utf-8',
  utf16: 'utf-16le',
  utf16le: 'utf-16le',
  utf16be: 'utf-16be',
  latin1: 'latin-1',
  iso88591: 'latin-1',
};

/** The encoding that a `reading` statement names; null where the name is unknown. */
export function encodingNamed(name: string): EncodingName | null {
  return written[name.toLowerCase().replace(/[^a-z0-9]/g, '')] ?? null;
}

export function unknownEncoding(name: string | undefined): HostFile {
  const message = `unknown encoding ${name ?? ''}; known are utf-8, utf-16le, utf-16be, latin-1`;
  return { ok: false, reason: 'unreadable', message };
}

/** What the first bytes say: a byte order mark, or the zero bytes of UTF-16 text; null where they say nothing. */
export function encodingFromStart(start: Uint8Array): FoundEncoding | null {
  if (start[0] === 0xef && start[1] === 0xbb && start[2] === 0xbf) return { name: 'utf-8', bom: 3 };
  if (start[0] === 0xff && start[1] === 0xfe) return { name: 'utf-16le', bom: 2 };
  if (start[0] === 0xfe && start[1] === 0xff) return { name: 'utf-16be', bom: 2 };
  const pairs = Math.min(start.length, 4096) >> 1;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < pairs; i++) {
    if (start[2 * i] === 0) even++;
    if (start[2 * i + 1] === 0) odd++;
  }
  // Digits, blanks and separators have a zero upper byte; a table of numbers is nearly all of that.
  if (pairs >= 2 && odd > 0.6 * pairs && even < 0.1 * pairs) return { name: 'utf-16le', bom: 0 };
  if (pairs >= 2 && even > 0.6 * pairs && odd < 0.1 * pairs) return { name: 'utf-16be', bom: 0 };
  return null;
}

/** Bytes of the mark of this encoding at the start, when the encoding was told and not detected. */
export function bomLength(start: Uint8Array, name: EncodingName): number {
  const found = encodingFromStart(start);
  return found !== null && found.name === name ? found.bom : 0;
}

/** Bytes at the end of `piece` that begin a UTF-8 character which the piece does not finish. */
function unfinished(piece: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, piece.length); back++) {
    const byte = piece[piece.length - back];
    if (byte < 0x80) return 0;
    if (byte >= 0xc0) return (byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2) > back ? back : 0;
  }
  return 0;
}

/** Checks UTF-8 piece by piece; characters may be split between pieces. */
export class Utf8Check {
  private rest: Uint8Array = new Uint8Array(0);
  private valid = true;

  add(piece: Uint8Array): void {
    if (!this.valid || piece.length === 0) return;
    let from = 0;
    if (this.rest.length > 0) {
      while (from < Math.min(3, piece.length) && (piece[from] & 0xc0) === 0x80) from++;
      const seam = Buffer.concat([this.rest, piece.subarray(0, from)]);
      if (from === piece.length && unfinished(seam) > 0) {
        this.rest = seam;
        return;
      }
      this.valid = isUtf8(seam);
    }
    const rest = unfinished(piece.subarray(from));
    this.rest = Uint8Array.from(piece.subarray(piece.length - rest));
    this.valid &&= isUtf8(piece.subarray(from, piece.length - rest));
  }

  get ok(): boolean {
    return this.valid && this.rest.length === 0;
  }
}
