import { createHash } from 'node:crypto';
import { closeSync, constants, fstatSync, openSync, read, readdirSync, readSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import type { DelimitedDialect, DelimitedRecords, Host, HostFile } from '../base/host';
import { decodedText, type RawPieces } from './decodedText';
import { unknownEncoding } from './encoding';
import { loadDelimited } from './loadDelimited';
import { isInside, kindOf, realPath, rootFor, withSlashes } from './root';

const pieceBytes = 1 << 19;
/** Up to this size the decoded text stays in memory while its file is in use; larger files are read again. */
const heldBytes = 1 << 27;

export class NodeHost implements Host {
  /** No path outside this folder is read, hashed or quoted. Links resolved. */
  readonly root: string;
  /** Texts that are open in an editor: they stand for the files on disk. Keyed by real path. */
  private readonly openTexts = new Map<string, string>();
  private readonly utf8 = new TextDecoder('utf-8', { ignoreBOM: true });

  /**
   * `folder`: where the program was started, or the folder that was opened. The root is the nearest folder at or above
   * it that holds `.git`, else that folder itself.
   */
  constructor(folder: string) {
    this.root = rootFor(folder);
  }

  /** Puts an open text in place of the file, or takes it away (`null`). */
  setText(path: string, text: string | null): void {
    const at = realPath(resolve(path));
    if (text === null) this.openTexts.delete(at);
    else this.openTexts.set(at, text);
  }

  async read(path: string, encoding?: string): Promise<HostFile> {
    const at = realPath(resolve(path));
    const shown = this.display(path);
    if (!isInside(this.root, at)) {
      return { ok: false, reason: 'outside', message: `${withSlashes(path)} lies outside ${withSlashes(this.root)}` };
    }
    const text = this.openTexts.get(at);
    if (text !== undefined) return this.file(path, once(Buffer.from(text, 'utf8')), 'utf-8', true);
    const kind = kindOf(at);
    if (kind === 'missing') return { ok: false, reason: 'missing', message: `there is no file ${shown}` };
    if (kind !== 'file') {
      return { ok: false, reason: 'unreadable', message: `${shown} is ${kind === 'folder' ? 'a folder' : 'no file'}` };
    }
    try {
      const { pieces, size } = disk(at);
      return await this.file(path, pieces, encoding, size <= heldBytes);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
      return { ok: false, reason: 'unreadable', message: `${shown} cannot be read (${code})` };
    }
  }

  private async file(path: string, raw: RawPieces, encoding: string | undefined, hold: boolean): Promise<HostFile> {
    const decoded = await decodedText(raw, encoding, hold);
    if (decoded === null) return unknownEncoding(encoding);
    return { ok: true, path, ...decoded };
  }

  list(folder: string): Promise<readonly string[]> {
    const at = realPath(resolve(folder));
    if (!isInside(this.root, at)) return Promise.resolve([]);
    try {
      return Promise.resolve(readdirSync(at).sort());
    } catch {
      return Promise.resolve([]);
    }
  }

  resolve(from: string, relativePath: string): string {
    return withSlashes(resolve(dirname(from), relativePath));
  }

  display(path: string): string {
    const at = realPath(resolve(path));
    return isInside(this.root, at) ? withSlashes(relative(this.root, at)) : withSlashes(resolve(path));
  }

  decode(bytes: Uint8Array): string {
    return this.utf8.decode(bytes);
  }

  parseDelimited(text: string, dialect: DelimitedDialect): Promise<DelimitedRecords> {
    return Promise.resolve(loadDelimited()(text, dialect));
  }

  key(text: string): string {
    return createHash('sha256').update(text).digest('base64url').slice(0, 22);
  }

  digest(text: string): string {
    return createHash('sha256').update(text, 'utf8').digest('hex');
  }

  pause(): Promise<void> {
    return new Promise((done) => setImmediate(done));
  }
}

function once(bytes: Uint8Array): RawPieces {
  return async function* () {
    yield bytes;
  };
}

/**
 * The file in fresh pieces. The path is already free of links; one put in its place since then is not followed. A small
 * file is read at once (handing it to another thread takes longer than reading it), of a larger one the next piece is on
 * its way while the one before is worked on.
 */
function disk(path: string): { pieces: RawPieces; size: number } {
  const flags = constants.O_RDONLY | ((constants.O_NOFOLLOW as number | undefined) ?? 0);
  const probe = openSync(path, flags);
  let size = 0;
  try {
    size = fstatSync(probe).size;
  } finally {
    closeSync(probe);
  }
  async function* pieces(): AsyncIterable<Uint8Array> {
    const file = openSync(path, flags);
    let next: Promise<Uint8Array> | null = null;
    try {
      if (size < pieceBytes) {
        // Read until nothing comes: the file may have grown since its size was asked for.
        for (let room = Math.max(size, 1); ; room = 4096) {
          const piece = Buffer.allocUnsafeSlow(room);
          const length = readSync(file, piece, 0, room, null);
          if (length === 0) return;
          yield piece.subarray(0, length);
        }
      }
      next = readPiece(file);
      for (;;) {
        const piece: Uint8Array = await next;
        next = null;
        if (piece.length === 0) return;
        next = readPiece(file);
        yield piece;
      }
    } finally {
      // Whoever stops early leaves a piece on its way.
      await next?.catch(() => undefined);
      closeSync(file);
    }
  }
  return { pieces, size };
}

function readPiece(file: number): Promise<Uint8Array> {
  const piece = Buffer.allocUnsafeSlow(pieceBytes);
  const reading = new Promise<Uint8Array>((done, failed) => {
    read(file, piece, 0, pieceBytes, null, (problem, length) => {
      if (problem !== null) failed(problem);
      else done(length === pieceBytes ? piece : piece.subarray(0, length));
    });
  });
  // It may fail while nobody waits for it yet; whoever does is told then.
  reading.catch(() => undefined);
  return reading;
}
