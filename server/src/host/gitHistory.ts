import type { Revision } from '../base/ancestry';
import { git } from './git';
import { asLink, linkMode } from './treeLinks';

export interface RevisionWithParents extends Revision {
  readonly parents: readonly string[];
}

/** What differs from a parent, by `COMMIT PARENT`: paths relative to the top, with the content at the parent (null: none). */
export type Changes = ReadonlyMap<string, ReadonlyMap<string, string | null>>;

/** Commits that can be reached from `head` and not from `since`, newest first. */
export async function readRevisions(
  top: string,
  head: string,
  since: string | null,
): Promise<Map<string, RevisionWithParents>> {
  const found = new Map<string, RevisionWithParents>();
  const format = '--format=tformat:%H%x00%h%x00%P%x00%aI%x00%aN';
  const range = since === null ? [head] : [head, `^${since}`];
  const answer = await git(top, ['rev-list', '--encoding=UTF-8', format, ...range, '--']);
  if (!answer.ok) throw new Error(`git rev-list: ${answer.message}`);
  for (const line of answer.out.toString('utf8').split('\n')) {
    const [commit, short, parents, date, author] = line.split('\0');
    // Between them stand lines that name the commit once more.
    if (author === undefined) continue;
    found.set(commit, { commit, short, date, author, parents: parents === '' ? [] : parents.split(' ') });
  }
  return found;
}

/** What each commit changed in its parents' files. */
export async function readChanges(top: string, revisions: ReadonlyMap<string, RevisionWithParents>): Promise<Changes> {
  const pairs = [...revisions.values()].flatMap((r) => r.parents.map((parent) => `${r.commit} ${parent}`));
  const found = new Map<string, Map<string, string | null>>();
  if (pairs.length === 0) return found;
  const words = ['diff-tree', '--stdin', '-r', '-z', '--raw', '--always', '--no-abbrev', '--no-renames'];
  const answer = await git(top, words, `${pairs.join('\n')}\n`);
  if (!answer.ok) throw new Error(`git diff-tree: ${answer.message}`);
  let pair = -1;
  let of = new Map<string, string | null>();
  const tokens = answer.out.toString('utf8').split('\0');
  for (let k = 0; k < tokens.length; k++) {
    const token = tokens[k];
    if (token.startsWith(':')) {
      // `:MODE MODE ID ID STATUS`, then the path. Mode 000000: there was no file, 160000: a repository of its own.
      const [mode, , was] = token.slice(1).split(' ');
      const id = mode === linkMode ? asLink(was) : was;
      of.set(tokens[++k], mode === '000000' || mode === '160000' ? null : id);
    } else if (token !== '') {
      of = new Map();
      found.set(pairs[++pair], of);
    }
  }
  if (pair + 1 !== pairs.length) throw new Error(`git diff-tree told of ${pair + 1} of ${pairs.length} commits`);
  return found;
}
