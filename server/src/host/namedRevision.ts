import { createHash } from 'node:crypto';
import type { FileSource } from '../base/source';
import type { Repository } from './repository';

/** What a name stands for at this moment. */
export interface NamedRevision {
  /** Words for people: `HEAD`, `index`, `merge base of main and HEAD`. */
  readonly label: string;
  /** null: the index. */
  readonly commit: string | null;
  /** The same for the same files. */
  readonly key: string;
  source(): Promise<FileSource>;
}

/** The index stands for itself, `main...` for the last commit that HEAD and main have in common, else git knows it. */
export const indexName = 'index';
const common = '...';

export function mergeBaseName(revision: string): string {
  return `${revision}${common}`;
}

/** null: there is no such revision here. */
export async function namedRevision(repository: Repository, name: string): Promise<NamedRevision | null> {
  if (name === indexName) {
    const digest = createHash('sha256');
    for (const [path, id] of await repository.tree('index')) digest.update(`${id} ${path}\0`);
    const key = `index ${digest.digest('hex')}`;
    return { label: indexName, commit: null, key, source: () => repository.source('index', indexName) };
  }
  const base = name.endsWith(common) ? name.slice(0, -common.length) : null;
  const label = base === null ? name : `merge base of ${base} and HEAD`;
  const commit = base === null ? await repository.commit(name) : await commonCommit(repository, base);
  if (commit === null) return null;
  return { label, commit, key: commit, source: () => repository.source(commit, label) };
}

async function commonCommit(repository: Repository, base: string): Promise<string | null> {
  const [one, other] = [await repository.commit(base), await repository.commit('HEAD')];
  return one === null || other === null ? null : repository.mergeBase(one, other);
}
