import { basename, dirname } from 'node:path';
import { git } from './git';
import { Repository } from './repository';
import { realPath } from './root';

/** Commits looked at; an older author is not named. */
const most = 200;

interface Commit {
  readonly author: string;
  /** The file as that commit has it; null: it is not there. Read when it is asked for. */
  text(): Promise<string | null>;
}

interface History {
  /** The newest first; none where git tells of none. */
  readonly commits: readonly Commit[];
  /** There are, or may be, older ones. */
  readonly cut: boolean;
}

/** Who changed files last, as git tells it. */
export class LastAuthors {
  private readonly histories = new Map<string, Promise<History>>();

  /** There may be other commits now. */
  forget(): void {
    this.histories.clear();
  }

  /**
   * Author of the last commit that changed what the file says, where `same` tells of two texts whether they say the same.
   * Null where nobody can be named: no git, no commit yet, changes that are not committed, or a history that ends before.
   */
  async of(path: string, text: string, same: (a: string, b: string) => boolean): Promise<string | null> {
    const known = this.histories.get(path) ?? historyOf(path);
    this.histories.set(path, known);
    const { commits, cut } = await known;
    let author: string | null = null;
    for (const commit of commits) {
      const then = await commit.text();
      if (then === null || !same(then, text)) return author;
      author = commit.author;
    }
    // The file began with its oldest commit, unless the history was cut.
    return cut ? null : author;
  }
}

async function historyOf(path: string): Promise<History> {
  const at = realPath(path);
  const folder = dirname(at);
  // `rev-list`, not `log`: that one may be configured by the repository to run a program that checks signatures.
  const words = ['rev-list', `--max-count=${most}`, '--format=%H%x09%aN', 'HEAD', '--', basename(at)];
  const log = await git(folder, ['--literal-pathspecs', ...words]);
  if (!log.ok) return { commits: [], cut: true };
  const lines = log.out.toString('utf8').split('\n');
  const commits = lines.flatMap((line): Commit[] => {
    const tab = line.indexOf('\t');
    if (tab < 0) return [];
    let read: Promise<string | null> | null = null;
    const text = (): Promise<string | null> => (read ??= blob(folder, `${line.slice(0, tab)}:./${basename(at)}`));
    return [{ author: line.slice(tab + 1), text }];
  });
  const cut = commits.length === most || (await (await Repository.open(folder))?.shallow()) !== false;
  return { commits, cut };
}

async function blob(folder: string, name: string): Promise<string | null> {
  const answer = await git(folder, ['cat-file', 'blob', name]);
  return answer.ok ? answer.out.toString('utf8') : null;
}
