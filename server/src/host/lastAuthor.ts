import { basename, dirname } from 'node:path';
import { git } from './git';
import { Repository } from './repository';
import { realPath } from './root';

/** Commits looked at; an older author is not named. */
const most = 200;

/**
 * Author of the last commit that changed what the file says, where `same` tells of two texts whether they say the same. Null
 * where nobody can be named: no git, no commit yet, changes that are not committed, or a history that ends before.
 */
export async function lastAuthor(
  path: string,
  text: string,
  same: (a: string, b: string) => boolean,
): Promise<string | null> {
  const at = realPath(path);
  const folder = dirname(at);
  // `rev-list`, not `log`: that one may be configured by the repository to run a program that checks signatures.
  const words = ['rev-list', `--max-count=${most}`, '--format=%H%x09%aN', 'HEAD', '--', basename(at)];
  const log = await git(folder, ['--literal-pathspecs', ...words]);
  if (!log.ok) return null;
  const commits = log.out
    .toString('utf8')
    .split('\n')
    .filter((line) => line.includes('\t'))
    .map((line) => ({ id: line.slice(0, line.indexOf('\t')), author: line.slice(line.indexOf('\t') + 1) }));
  const read = async (id: string): Promise<string | null> => {
    const blob = await git(folder, ['cat-file', 'blob', `${id}:./${basename(at)}`]);
    return blob.ok ? blob.out.toString('utf8') : null;
  };
  let author: string | null = null;
  for (const commit of commits) {
    const then = await read(commit.id);
    if (then === null || !same(then, text)) return author;
    author = commit.author;
  }
  // The file began with its oldest commit, unless the history was cut.
  const cut = commits.length === most || (await (await Repository.open(folder))?.shallow()) !== false;
  return cut ? null : author;
}
