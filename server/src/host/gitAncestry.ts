import type { Ancestry, Revision } from '../base/ancestry';
import type { FileSource } from '../base/source';
import { readChanges, readRevisions, type Changes, type RevisionWithParents } from './gitHistory';
import type { Repository } from './repository';
import { TreeSource, type TreeIds } from './treeSource';

/**
 * The way back from a commit: revisions and their changes are read in two calls, and the files of an older one are those of
 * the newest with the changes taken back.
 */
export class GitAncestry implements Ancestry {
  /** What is different here from the start of the way: content by path, null where there is no such file. */
  private readonly overlay = new Map<string, string | null>();

  private constructor(
    private readonly repository: Repository,
    private here: RevisionWithParents,
    private readonly known: ReadonlyMap<string, RevisionWithParents>,
    private readonly changes: Changes,
    private readonly start: ReadonlyMap<string, string>,
  ) {}

  /** `since`: a commit that, with all that came before it, is not gone to. null: nothing came after it. */
  static async from(repository: Repository, head: string, since: string | null): Promise<GitAncestry | null> {
    const known = await readRevisions(repository.top, head, since);
    const first = known.get(head);
    if (first === undefined) return null;
    const changes = await readChanges(repository.top, known);
    return new GitAncestry(repository, first, known, changes, await repository.tree(head));
  }

  get at(): Revision {
    return this.here;
  }

  get parents(): number {
    return this.here.parents.length;
  }

  get isOutside(): boolean {
    return !this.known.has(this.here.commit);
  }

  changed(parent: number): ReadonlyMap<string, boolean> {
    const { top } = this.repository;
    return new Map([...this.changesFrom(parent)].map(([name, was]) => [`${top}/${name}`, was !== null]));
  }

  async renamed(parent: number, path: string): Promise<string | null> {
    const { top } = this.repository;
    const renames = await this.repository.renames(this.here.parents[parent], this.here.commit);
    const was = renames.get(path.slice(top.length + 1));
    return was === undefined ? null : `${top}/${was}`;
  }

  back(parent: number): void {
    for (const [path, was] of this.changesFrom(parent)) this.overlay.set(path, was);
    const commit = this.here.parents[parent];
    // Not known: the way ends there, and only its files count.
    this.here = this.known.get(commit) ?? { commit, short: commit.slice(0, 7), date: '', author: '', parents: [] };
  }

  files(label: string): FileSource {
    return this.source(this.here.commit, label, this.overlay);
  }

  parentFiles(parent: number): FileSource {
    const commit = this.here.parents[parent];
    return this.source(commit, commit.slice(0, 7), [...this.overlay, ...this.changesFrom(parent)]);
  }

  async passed(paths: readonly string[]): Promise<readonly string[]> {
    const here = this.source(this.here.commit, 'here', this.overlay);
    const found = new Set<string>();
    for (const path of paths) for (const one of await here.passed(path)) found.add(one);
    return [...found];
  }

  private source(commit: string, label: string, overlay: Iterable<readonly [string, string | null]>): TreeSource {
    return new TreeSource(this.repository, commit, label, new OlderIds(this.start, new Map(overlay)));
  }

  private changesFrom(parent: number): ReadonlyMap<string, string | null> {
    return this.changes.get(`${this.here.commit} ${this.here.parents[parent]}`) ?? new Map();
  }
}

class OlderIds implements TreeIds {
  constructor(
    private readonly start: ReadonlyMap<string, string>,
    private readonly overlay: ReadonlyMap<string, string | null>,
  ) {}

  get(path: string): string | undefined {
    const over = this.overlay.get(path);
    return over === undefined ? this.start.get(path) : (over ?? undefined);
  }

  *keys(): Generator<string> {
    for (const path of this.start.keys()) if (!this.overlay.has(path)) yield path;
    for (const [path, id] of this.overlay) if (id !== null) yield path;
  }
}
