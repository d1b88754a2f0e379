import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Repository } from '../host/repository';
import { BadUsage, Trouble } from './exitCodes';

/** What `diff` was asked to compare. */
export type Wanted =
  | { readonly kind: 'revisions'; readonly from: string; readonly to: string | null; readonly paths: readonly string[] }
  /** Two glosses, two folders, or a saved results file and glosses. */
  | { readonly kind: 'files'; readonly from: string; readonly to: string };

/** The index stands for itself; everything else that is no path is a revision. */
export const indexWord = 'index';

/**
 * `[A [B]] [paths]`: the first one or two words that name revisions are A and B, the rest are paths. With two files or
 * folders and no revision, these two are compared. A word that is both a revision and a file must be told apart: paths
 * follow `--`.
 */
export async function wantedOf(
  words: readonly string[],
  afterDashes: readonly string[] | null,
  repository: Repository | null,
  cwd: string,
): Promise<Wanted> {
  const revisions: string[] = [];
  const paths: string[] = [];
  for (const word of words) {
    const isPath = existsSync(resolve(cwd, word));
    const isRevision = await namesRevision(word, repository);
    if (isPath && isRevision && afterDashes === null) {
      throw new BadUsage(`${word} is a revision and a file; write the paths after --`);
    }
    if (isRevision && paths.length === 0 && revisions.length < 2) revisions.push(word);
    else if (isPath || /[*?[\]{}()!]/.test(word)) paths.push(word);
    else if (repository === null)
      throw new Trouble(`there is no file ${word}, and no repository here to hold a revision`);
    else throw new Trouble(`${word} is neither a revision nor a file${await beyondShallow(repository)}`);
  }
  paths.push(...(afterDashes ?? []));
  if (revisions.length === 0 && paths.length === 2 && comparable(paths, cwd)) {
    return { kind: 'files', from: paths[0], to: paths[1] };
  }
  if (repository === null)
    throw new Trouble('there is no git repository here; name two glosses, folders or results files');
  return { kind: 'revisions', from: revisions[0] ?? 'HEAD', to: revisions[1] ?? null, paths };
}

/** An older revision may exist beyond the end of a shallow clone. */
async function beyondShallow(repository: Repository): Promise<string> {
  return (await repository.shallow()) ? '; this clone is shallow, and `git fetch --unshallow` fetches the rest' : '';
}

async function namesRevision(word: string, repository: Repository | null): Promise<boolean> {
  if (repository === null) return false;
  return word === indexWord || (await repository.commit(word)) !== null;
}

/** Two folders, two glosses, or a results file with either. */
function comparable(paths: readonly string[], cwd: string): boolean {
  const kinds = paths.map((p) => {
    const at = resolve(cwd, p);
    if (!existsSync(at)) return 'none';
    return statSync(at).isDirectory() ? 'folder' : at.endsWith('.json') ? 'saved' : 'file';
  });
  return !kinds.includes('none') && (kinds[0] === kinds[1] || kinds.includes('saved'));
}
