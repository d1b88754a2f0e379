/**
 * A set of files at one moment: the working copy, the index, a commit, a folder. Paths are those of the host, absolute with
 * `/`. Two sources give a path the same `contentId` only where its content is the same.
 */
export interface FileSource {
  /** `working copy`, `index`, `HEAD`, `3f2a91c`. */
  readonly label: string;
  /** null: there is no such file. */
  contentId(path: string): Promise<string | null>;
  read(path: string): Promise<SourceFile>;
  /** Names in a folder, sorted. */
  list(folder: string): Promise<readonly string[]>;
}

export type SourceFile =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly reason: 'missing' | 'unreadable'; readonly message: string };

/** A source that is taken not to change while one question is answered: what a path has is asked once. */
export class StillSource implements FileSource {
  private readonly ids = new Map<string, Promise<string | null>>();

  constructor(private readonly of: FileSource) {}

  get label(): string {
    return this.of.label;
  }

  contentId(path: string): Promise<string | null> {
    const known = this.ids.get(path) ?? this.of.contentId(path);
    this.ids.set(path, known);
    return known;
  }

  read(path: string): Promise<SourceFile> {
    return this.of.read(path);
  }

  list(folder: string): Promise<readonly string[]> {
    return this.of.list(folder);
  }
}

/** One source with some of its files taken from another, or replaced by a text; what it lacks comes from the other too. */
export class OverlaidSource implements FileSource {
  readonly label: string;

  constructor(
    private readonly under: FileSource,
    private readonly over: FileSource,
    private readonly replaced: ReadonlyMap<
      string,
      'from the other' | { readonly text: string; readonly bytes: Uint8Array }
    >,
  ) {
    this.label = `${under.label} with changes of ${over.label}`;
  }

  async contentId(path: string): Promise<string | null> {
    const by = this.replaced.get(path);
    if (by === 'from the other') return this.over.contentId(path);
    if (by !== undefined) return `text ${by.text}`;
    return (await this.under.contentId(path)) ?? this.over.contentId(path);
  }

  async read(path: string): Promise<SourceFile> {
    const by = this.replaced.get(path);
    if (by === 'from the other') return this.over.read(path);
    if (by !== undefined) return { ok: true, bytes: by.bytes };
    const file = await this.under.read(path);
    return !file.ok && file.reason === 'missing' ? this.over.read(path) : file;
  }

  list(folder: string): Promise<readonly string[]> {
    return this.under.list(folder);
  }
}

/** A host that can be turned to another source; tells which of the files it gave before are others there. */
export interface Turnable {
  use(source: FileSource): Promise<readonly string[]>;
}
