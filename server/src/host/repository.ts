import type { FileSource } from '../base/source';
import { git } from './git';
import { GitObjects } from './gitObjects';
import { realPath, rootFor, withSlashes } from './root';
import { asLink, linkMode } from './treeLinks';
import { TreeSource, type TreeIds } from './treeSource';

/** A repository read through git's plumbing: revisions, trees, blobs. Writes nothing. */
export class Repository {
  private readonly blobs = new Map<string, Promise<Buffer | null>>();
  private readonly trees = new Map<string, Promise<ReadonlyMap<string, string>>>();
  private held = 0;
  private readonly objects: GitObjects;

  private constructor(
    /** Top folder, with `/`. */
    readonly top: string,
  ) {
    this.objects = new GitObjects(top);
  }

  /**
   * null: the folder is in no repository, or there is no git program. Nor where git's settings put the files elsewhere than at
   * the nearest folder above with `.git`: a repository must not open files outside of itself.
   */
  static async open(folder: string): Promise<Repository | null> {
    const answer = await git(folder, ['rev-parse', '--show-toplevel']);
    if (!answer.ok) return null;
    const top = line(answer.out);
    return realPath(top) === rootFor(folder) ? new Repository(withSlashes(top)) : null;
  }

  /** The commit a revision names (`HEAD`, a branch, a tag, `HEAD~2`, an abbreviated id); null where there is none. */
  async commit(revision: string): Promise<string | null> {
    if (revision.startsWith('-')) return null;
    const answer = await git(this.top, [
      'rev-parse',
      '--verify',
      '--quiet',
      '--end-of-options',
      `${revision}^{commit}`,
    ]);
    return answer.ok ? line(answer.out) : null;
  }

  async mergeBase(a: string, b: string): Promise<string | null> {
    const answer = await git(this.top, ['merge-base', a, b]);
    return answer.ok ? line(answer.out) : null;
  }

  /** Names of branches (also of remotes) and tags, those last committed to first. */
  async refs(): Promise<{ readonly branches: readonly string[]; readonly tags: readonly string[] }> {
    const named = async (...places: readonly string[]): Promise<string[]> => {
      const words = ['for-each-ref', '--sort=-creatordate', `--count=${mostRefs}`, '--format=%(refname)', ...places];
      const answer = await git(this.top, words);
      const names = answer.ok ? answer.out.toString('utf8').split(/\r?\n/) : [];
      return names.filter((n) => n !== '' && !n.endsWith('/HEAD')).map((n) => n.replace(/^refs\/[^/]+\//, ''));
    };
    return { branches: await named('refs/heads/', 'refs/remotes/'), tags: await named('refs/tags/') };
  }

  /** True where the history ends early: what a commit names may not be here. */
  async shallow(): Promise<boolean> {
    const answer = await git(this.top, ['rev-parse', '--is-shallow-repository']);
    return answer.ok && line(answer.out) === 'true';
  }

  /** Blob ids by path relative to the top, of a commit or of the index; those of links as `asLink` marks them. */
  tree(of: string | 'index'): Promise<ReadonlyMap<string, string>> {
    const read = async (): Promise<ReadonlyMap<string, string>> => {
      const words = of === 'index' ? ['ls-files', '-s', '-z'] : ['ls-tree', '-r', '-z', '--full-tree', of];
      const answer = await git(this.top, words);
      const found = new Map<string, string>();
      if (!answer.ok) return found;
      for (const entry of answer.out.toString('utf8').split('\0')) {
        const tab = entry.indexOf('\t');
        if (tab < 0) continue;
        const fields = entry.slice(0, tab).split(' ');
        // ls-files: mode id stage; ls-tree: mode type id.
        const id = of === 'index' ? fields[1] : fields[2];
        if (of === 'index' ? fields[2] === '0' : fields[1] === 'blob') {
          found.set(entry.slice(tab + 1), fields[0] === linkMode ? asLink(id) : id);
        }
      }
      return found;
    };
    if (of === 'index') return read();
    const known = this.trees.get(of) ?? read();
    this.trees.set(of, known);
    return known;
  }

  /** Glosses that git takes for renamed from one commit to another, or to the index: new name → old, relative to the top. */
  async renames(from: string, to: string | 'index'): Promise<ReadonlyMap<string, string>> {
    const words = ['-r', '-M', '-z', '--name-status', '--diff-filter=R'];
    const between = to === 'index' ? ['diff-index', '--cached', ...words, from] : ['diff-tree', ...words, from, to];
    const answer = await git(this.top, [...between, '--', ':(glob)**/*.gloss']);
    const found = new Map<string, string>();
    if (!answer.ok) return found;
    // Status, old name, new name.
    const tokens = answer.out.toString('utf8').split('\0');
    for (let k = 0; k + 2 < tokens.length; k += 3) found.set(tokens[k + 2], tokens[k + 1]);
    return found;
  }

  /** null: the object is not here (a partial or shallow clone). */
  async blob(id: string): Promise<Buffer | null> {
    const known = this.blobs.get(id);
    if (known !== undefined) return known;
    const read = this.objects.read(id);
    this.blobs.set(id, read);
    const bytes = await read;
    this.held += bytes?.length ?? 0;
    if (this.held > mostHeld) {
      this.blobs.clear();
      this.held = 0;
    }
    return bytes;
  }

  /** Git's process for contents ends at once; what is asked later starts it again. */
  rest(): void {
    this.objects.end();
  }

  /** `tree`: as it was read before, for the index does not stay. */
  async source(of: string | 'index', label: string, tree?: TreeIds): Promise<FileSource> {
    return new TreeSource(this, of, label, tree ?? (await this.tree(of)));
  }
}

/** More than a person would look through. */
const mostRefs = 500;

/** Contents kept at once; a walk over data of gigabytes reads again. */
const mostHeld = 1 << 28;

function line(out: Buffer): string {
  return out.toString('utf8').replace(/\r?\n$/, '');
}
