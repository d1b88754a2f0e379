import { createHash } from 'node:crypto';
import { common, indexAsItWas, indexName, nameWords } from '../base/revisionName';
import type { FileSource } from '../base/source';
import type { Repository } from './repository';

/** What a name stands for at this moment. */
export interface NamedRevision {
  /** Names the same files later on, wherever HEAD, a branch or the index has moved: the full commit, or the index with its digest. */
  readonly lasting: string;
  /** Words for people: `HEAD`, `index`, `merge base of main and HEAD`. */
  readonly label: string;
  /** null: the index. */
  readonly commit: string | null;
  /** The same for the same files. */
  readonly key: string;
  source(): Promise<FileSource>;
}

export function mergeBaseName(revision: string): string {
  return `${revision}${common}`;
}

/** null: there is no such revision here, or the index is not as it was then. */
export async function namedRevision(repository: Repository, name: string): Promise<NamedRevision | null> {
  if (name === indexName || name.startsWith(indexAsItWas)) {
    const digest = createHash('sha256');
    const tree = await repository.tree('index');
    for (const [path, id] of tree) digest.update(`${id} ${path}\0`);
    const lasting = `${indexAsItWas}${digest.digest('hex')}`;
    if (name !== indexName && name !== lasting) return null;
    const source = (): Promise<FileSource> => repository.source('index', indexName, tree);
    return { lasting, label: indexName, commit: null, key: lasting, source };
  }
  const base = name.endsWith(common) ? name.slice(0, -common.length) : null;
  const label = nameWords(name);
  const commit = base === null ? await repository.commit(name) : await commonCommit(repository, base);
  if (commit === null) return null;
  return { lasting: commit, label, commit, key: commit, source: () => repository.source(commit, label) };
}

async function commonCommit(repository: Repository, base: string): Promise<string | null> {
  const [one, other] = [await repository.commit(base), await repository.commit('HEAD')];
  return one === null || other === null ? null : repository.mergeBase(one, other);
}
