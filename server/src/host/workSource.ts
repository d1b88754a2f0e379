import { createHash } from 'node:crypto';
import { readFile, readdir, stat } from 'node:fs/promises';
import type { FileSource, SourceFile } from '../base/source';
import { isInside, realPath } from './root';

/** The files as they lie in the folder, with the texts that are open and unsaved in their place. */
export class WorkSource implements FileSource {
  private readonly known = new Map<string, { readonly stamp: string; readonly id: string }>();

  constructor(
    private readonly root: string,
    private readonly open: (path: string) => string | null = () => null,
    readonly label: string = 'working copy',
  ) {}

  /** The id git gives such a content, so that an unchanged file is known for unchanged. */
  async contentId(path: string): Promise<string | null> {
    const text = this.open(path);
    if (text !== null) return gitId(Buffer.from(text, 'utf8'));
    try {
      const at = realPath(path);
      if (!isInside(this.root, at)) return null;
      const { mtimeMs, size } = await stat(at);
      const stamp = `${mtimeMs} ${size}`;
      const known = this.known.get(at);
      if (known?.stamp === stamp) return known.id;
      const id = gitId(await readFile(at));
      this.known.set(at, { stamp, id });
      return id;
    } catch {
      return null;
    }
  }

  async read(path: string): Promise<SourceFile> {
    const text = this.open(path);
    if (text !== null) return { ok: true, bytes: Buffer.from(text, 'utf8') };
    const at = realPath(path);
    if (!isInside(this.root, at))
      return { ok: false, reason: 'unreadable', message: `${path} lies outside ${this.root}` };
    try {
      return { ok: true, bytes: await readFile(at) };
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
      if (code === 'ENOENT') return { ok: false, reason: 'missing', message: `there is no file ${path}` };
      return { ok: false, reason: 'unreadable', message: `${path} cannot be read (${code})` };
    }
  }

  async list(folder: string): Promise<readonly string[]> {
    try {
      return isInside(this.root, realPath(folder)) ? (await readdir(folder)).sort() : [];
    } catch {
      return [];
    }
  }
}

function gitId(bytes: Uint8Array): string {
  return createHash('sha1').update(`blob ${bytes.length}\0`).update(bytes).digest('hex');
}
