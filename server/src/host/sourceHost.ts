import type { DelimitedDialect, DelimitedRecords, Host, HostFile } from '../base/host';
import type { FileSource, Turnable } from '../base/source';
import { decodedText } from './decodedText';
import { unknownEncoding } from './encoding';
import { NodeHost } from './nodeHost';
import { isInside, withSlashes } from './root';
import { isPointer } from './treeSource';
import { resolve } from 'node:path';

/** A host whose files come from a source that can be changed: two revisions share one engine and what it remembers. */
export class SourceHost implements Host, Turnable {
  private readonly base: NodeHost;
  private source: FileSource;
  /** What was given for each path that was asked for, by content. */
  private readonly given = new Map<string, string | null>();

  constructor(folder: string, first: FileSource) {
    this.base = new NodeHost(folder);
    this.source = first;
  }

  get root(): string {
    return this.base.root;
  }

  async use(source: FileSource): Promise<readonly string[]> {
    if (source === this.source) return [];
    this.source = source;
    const changed: string[] = [];
    for (const [path, id] of this.given) {
      const now = await source.contentId(path);
      if (now === id) continue;
      changed.push(path);
      this.given.delete(path);
    }
    return changed;
  }

  async read(path: string, encoding?: string): Promise<HostFile> {
    const at = withSlashes(resolve(path));
    if (!isInside(this.base.root, at)) {
      return { ok: false, reason: 'outside', message: `${at} lies outside ${withSlashes(this.base.root)}` };
    }
    const { source } = this;
    this.given.set(at, await source.contentId(at));
    const file = await source.read(at);
    if (!file.ok) return file;
    if (isPointer(file.bytes)) {
      const message = `the content of ${this.display(at)} is a pointer to large-file storage; \`git lfs pull\` fetches its content`;
      return { ok: false, reason: 'unreadable', message };
    }
    const { bytes } = file;
    async function* pieces(): AsyncIterable<Uint8Array> {
      // Copies: whoever reads a piece may keep and change it.
      for (let i = 0; i < bytes.length; i += pieceBytes) yield Uint8Array.from(bytes.subarray(i, i + pieceBytes));
    }
    const decoded = await decodedText(pieces, encoding, true);
    return decoded === null ? unknownEncoding(encoding) : { ok: true, path, ...decoded };
  }

  list(folder: string): Promise<readonly string[]> {
    return this.source.list(withSlashes(resolve(folder)));
  }

  resolve(from: string, relative: string): string {
    return this.base.resolve(from, relative);
  }

  display(path: string): string {
    return this.base.display(path);
  }

  decode(bytes: Uint8Array): string {
    return this.base.decode(bytes);
  }

  parseDelimited(text: string, dialect: DelimitedDialect): Promise<DelimitedRecords> {
    return this.base.parseDelimited(text, dialect);
  }

  key(text: string): string {
    return this.base.key(text);
  }

  digest(text: string): string {
    return this.base.digest(text);
  }

  pause(): Promise<void> {
    return this.base.pause();
  }
}

const pieceBytes = 1 << 19;
