import type { FileSource } from '../../base/source';
import type { NamedRevision } from '../../host/namedRevision';
import type { Repository } from '../../host/repository';
import type { RevisionEngine } from '../../revisions/revisionEngine';
import type { Spellings } from './spellings';

/** A repository with the engine that evaluates its revisions. */
export interface RevisionPlace {
  readonly repository: Repository;
  readonly engine: RevisionEngine;
  readonly spellings: Spellings;
}

/** Texts that stand for their files; null: the file stands for itself. */
export type OpenAt = (path: string) => string | null;

/** Paths of glosses of a revision that are no longer there. */
export async function goneGlosses(
  { repository }: RevisionPlace,
  named: NamedRevision,
  now: FileSource,
): Promise<readonly string[]> {
  const gone: string[] = [];
  for (const name of (await repository.tree(named.commit ?? 'index')).keys()) {
    const path = `${repository.top}/${name}`;
    if (name.endsWith('.gloss') && (await now.contentId(path)) === null) gone.push(path);
  }
  return gone;
}
