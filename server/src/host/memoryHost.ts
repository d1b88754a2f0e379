import { createHash } from 'node:crypto';
import { posix } from 'node:path';
import { Counters } from '../base/counters';
import type { DelimitedDialect, DelimitedRecords, Host, HostFile } from '../base/host';
import { decodedText } from './decodedText';
import { unknownEncoding } from './encoding';
import { loadDelimited } from './loadDelimited';

/**
 * The host of the tests: files are texts or bytes in memory, below the root `/`-separated paths, nothing else exists.
 * Counts `read`, `list`, `resolve`, `decode`, `parseDelimited`, `key`, `pause` and `chunk` (pieces given out).
 */
export class MemoryHost implements Host {
  readonly counts = new Counters();
  private files = new Map<string, string | Uint8Array>();
  private readonly openTexts = new Map<string, string>();
  private readonly utf8 = new TextDecoder('utf-8', { ignoreBOM: true });

  /** `chunkBytes` splits what `chunks` gives out, so that tests can show that nothing depends on it. */
  constructor(
    files: Readonly<Record<string, string | Uint8Array>> = {},
    private readonly root = '/lab',
    private readonly chunkBytes = 1 << 16,
  ) {
    for (const [path, content] of Object.entries(files)) this.put(path, content);
  }

  /** Writes a file, or takes it away. Relative paths are below the root. */
  put(path: string, content: string | Uint8Array | null): void {
    const at = posix.resolve(this.root, path);
    if (content === null) this.files.delete(at);
    else this.files.set(at, content);
  }

  /** An open text stands for its file until it is taken away (`null`). */
  setText(path: string, text: string | null): void {
    const at = posix.resolve(this.root, path);
    if (text === null) this.openTexts.delete(at);
    else this.openTexts.set(at, text);
  }

  /** The files alone, whatever texts are open; as they are at any time. */
  saved(): MemoryHost {
    const host = new MemoryHost({}, this.root, this.chunkBytes);
    host.files = this.files;
    return host;
  }

  async read(path: string, encoding?: string): Promise<HostFile> {
    this.counts.add('read');
    const at = posix.resolve(this.root, path);
    if (!at.startsWith(this.root === '/' ? '/' : `${this.root}/`)) {
      return { ok: false, reason: 'outside', message: `${at} lies outside ${this.root}` };
    }
    const content = this.openTexts.get(at) ?? this.files.get(at);
    if (content === undefined) return { ok: false, reason: 'missing', message: `there is no file ${this.display(at)}` };
    const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : Uint8Array.from(content);
    const { chunkBytes, counts } = this;
    async function* pieces(): AsyncIterable<Uint8Array> {
      for (let from = 0; from < bytes.length; from += chunkBytes) yield bytes.slice(from, from + chunkBytes);
    }
    const decoded = await decodedText(pieces, encoding, true);
    if (decoded === null) return unknownEncoding(encoding);
    async function* counted(): AsyncIterable<Uint8Array> {
      for await (const piece of decoded!.chunks()) {
        counts.add('chunk');
        yield piece;
      }
    }
    return { ok: true, path, ...decoded, chunks: counted };
  }

  list(folder: string): Promise<readonly string[]> {
    this.counts.add('list');
    const at = posix.resolve(this.root, folder);
    const prefix = at.endsWith('/') ? at : `${at}/`;
    const names = [...this.files.keys()].filter((path) => path.startsWith(prefix));
    return Promise.resolve([...new Set(names.map((path) => path.slice(prefix.length).split('/')[0]))].sort());
  }

  resolve(from: string, relative: string): string {
    this.counts.add('resolve');
    return posix.resolve(posix.dirname(posix.resolve(this.root, from)), relative);
  }

  display(path: string): string {
    return posix.relative(this.root, posix.resolve(this.root, path));
  }

  decode(bytes: Uint8Array): string {
    this.counts.add('decode');
    return this.utf8.decode(bytes);
  }

  parseDelimited(text: string, dialect: DelimitedDialect): Promise<DelimitedRecords> {
    this.counts.add('parseDelimited');
    return Promise.resolve(loadDelimited()(text, dialect));
  }

  key(text: string): string {
    this.counts.add('key');
    return createHash('sha256').update(text).digest('base64url').slice(0, 22);
  }

  digest(text: string): string {
    return createHash('sha256').update(text, 'utf8').digest('hex');
  }

  pause(): Promise<void> {
    this.counts.add('pause');
    return Promise.resolve();
  }
}
