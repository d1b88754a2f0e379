import type { FileSource, SourceFile } from '../base/source';
import { follow, type Followed } from './treeLinks';

/** What git tells of one state of the files: ids by path relative to the top, of links marked (`asLink`). */
export interface TreeIds {
  get(path: string): string | undefined;
  keys(): Iterable<string>;
}

/** Contents by id, of files below `top`. */
export interface Blobs {
  readonly top: string;
  /** null: the object is not here. */
  blob(id: string): Promise<Buffer | null>;
}

/** The files of one tree. Links are followed within it. */
export class TreeSource implements FileSource {
  constructor(
    private readonly repository: Blobs,
    private readonly of: string,
    readonly label: string,
    private readonly ids: TreeIds,
  ) {}

  async contentId(path: string): Promise<string | null> {
    const at = await this.followed(path);
    return at.ok ? at.id : null;
  }

  async read(path: string): Promise<SourceFile> {
    const name = this.relative(path);
    const at = await this.followed(path);
    if (!at.ok) return { ok: false, reason: 'missing', message: this.missing(name, at.why) };
    const bytes = await this.repository.blob(at.id);
    if (bytes === null) {
      // Fetching the commit again would bring nothing: the clone has it, and its filter would leave the content out anew.
      const message = `the content of ${name} in ${this.label} is not in this clone; \`git fetch --refetch --no-filter\` fetches it`;
      return { ok: false, reason: 'unreadable', message };
    }
    if (isPointer(bytes)) {
      const message = `the content of ${name} in ${this.label} is a pointer to large-file storage; \`git lfs fetch origin ${this.of}\` fetches it`;
      return { ok: false, reason: 'unreadable', message };
    }
    return { ok: true, bytes };
  }

  async list(folder: string): Promise<readonly string[]> {
    const { passed } = await this.followed(folder);
    const name = passed.at(-1) ?? '';
    const prefix = name === '' ? '' : `${name}/`;
    const names = [...this.ids.keys()].filter((p) => p.startsWith(prefix)).map((p) => p.slice(prefix.length));
    return [...new Set(names.map((n) => n.split('/')[0]))].sort();
  }

  /** The paths that a path leads over, links followed: what changes at one of them may change its content. */
  async passed(path: string): Promise<readonly string[]> {
    return (await this.followed(path)).passed.map((name) => `${this.repository.top}/${name}`);
  }

  private followed(path: string): Promise<Followed> {
    return follow(this.relative(path), this.ids, (id) => this.repository.blob(id));
  }

  private missing(name: string, why: (Followed & { ok: false })['why']): string {
    if (why === 'outside') return `${name} in ${this.label} is a link to a place outside the repository`;
    if (why === 'endless') return `${name} in ${this.label} is a link that leads to no file`;
    return `there is no file ${name} in ${this.label}`;
  }

  private relative(path: string): string {
    const { top } = this.repository;
    return path === top ? '' : path.startsWith(`${top}/`) ? path.slice(top.length + 1) : path;
  }
}

/** A few lines that stand for a file kept elsewhere: `version …`, `oid sha256:…`, `size …`. */
export function isPointer(bytes: Uint8Array): boolean {
  if (bytes.length > 1024) return false;
  return /^version \S+\n(?:\S.*\n)*oid sha256:[0-9a-f]{64}\nsize \d+\n?$/.test(Buffer.from(bytes).toString('latin1'));
}
