import { createHash } from 'node:crypto';
import type { DelimitedDialect, DelimitedRecords, Host, HostFile } from '../../base/host';
import { decodedText } from '../../host/decodedText';
import { unknownEncoding } from '../../host/encoding';
import { loadDelimited } from '../../host/loadDelimited';
import type { FileBytes } from '../../protocol/files';
import { displayUri, isBelow, resolveUri } from './uriPaths';

/** Files as the client gives them. */
export interface ClientFiles {
  read(uri: string): Promise<FileBytes>;
  list(uri: string): Promise<readonly string[]>;
}

/** The host of a server without a disk: what it reads comes from the client, by URI. */
export class ClientHost implements Host {
  private readonly open = new Map<string, string>();
  private readonly utf8 = new TextDecoder('utf-8', { ignoreBOM: true });

  constructor(
    readonly root: string,
    private readonly files: ClientFiles,
  ) {}

  setText(uri: string, text: string | null): void {
    if (text === null) this.open.delete(uri);
    else this.open.set(uri, text);
  }

  async read(uri: string, encoding?: string): Promise<HostFile> {
    if (!isBelow(this.root, uri)) {
      return { ok: false, reason: 'outside', message: `${uri} lies outside ${this.root}` };
    }
    const text = this.open.get(uri);
    const file: FileBytes | Uint8Array = text === undefined ? await this.files.read(uri) : Buffer.from(text, 'utf8');
    if (!(file instanceof Uint8Array) && !file.ok) {
      const message = file.reason === 'missing' ? `there is no file ${this.display(uri)}` : file.message;
      return { ok: false, reason: file.reason, message };
    }
    const bytes = file instanceof Uint8Array ? file : Buffer.from(file.base64, 'base64');
    async function* pieces(): AsyncIterable<Uint8Array> {
      for (let i = 0; i < bytes.length; i += pieceBytes) yield Uint8Array.from(bytes.subarray(i, i + pieceBytes));
    }
    const decoded = await decodedText(pieces, encoding, true);
    return decoded === null ? unknownEncoding(encoding) : { ok: true, path: uri, ...decoded };
  }

  list(folder: string): Promise<readonly string[]> {
    return isBelow(this.root, folder) ? this.files.list(folder) : Promise.resolve([]);
  }

  resolve(from: string, relative: string): string {
    return resolveUri(from, relative);
  }

  display(uri: string): string {
    return displayUri(this.root, uri);
  }

  decode(bytes: Uint8Array): string {
    return this.utf8.decode(bytes);
  }

  parseDelimited(text: string, dialect: DelimitedDialect): Promise<DelimitedRecords> {
    return Promise.resolve(loadDelimited()(text, dialect));
  }

  key(text: string): string {
    return createHash('sha256').update(text).digest('hex').slice(0, 32);
  }

  digest(text: string): string {
    return createHash('sha256').update(text, 'utf8').digest('hex');
  }

  pause(): Promise<void> {
    return new Promise((done) => setTimeout(done, 0));
  }
}

const pieceBytes = 1 << 19;
