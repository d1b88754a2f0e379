import type { FileSource } from '../base/source';
import { GitAncestry } from '../host/gitAncestry';
import type { Repository } from '../host/repository';
import type { HistoryEnd } from '../presentation/history/model';
import { movedGlosses } from '../revisions/movedGlosses';
import type { RevisionEngine } from '../revisions/revisionEngine';
import { sameState, stateOf, statesOf, type States } from '../revisions/states';
import { Trouble } from './exitCodes';
import type { HistoryWish } from './historyArguments';

export interface WantedStates extends Omit<States, 'end'> {
  readonly end: HistoryEnd;
}

/** The states of a gloss in its repository, the working copy first where it is another than that of HEAD. */
export async function wantedStates(
  engine: RevisionEngine,
  repository: Repository,
  work: FileSource,
  path: string,
  { since, limit }: Pick<HistoryWish, 'since' | 'limit'>,
): Promise<WantedStates> {
  const base = since === null ? null : await repository.commit(since);
  if (since !== null && base === null) {
    const more = (await repository.shallow())
      ? '; this clone is shallow, `git fetch --unshallow` fetches the rest'
      : '';
    throw new Trouble(`${since} names no revision of this repository${more}`);
  }
  const head = await repository.commit('HEAD');
  const was = head === null ? null : await committedPath(engine, repository, head, work, path);
  const committed =
    head === null || was === null ? noStates : await committedStates(engine, repository, head, base, was, limit);
  const own = await stateOf(engine, work, path, null);
  const [newest] = committed.states;
  const isNews = newest === undefined ? await isThere(work, path) : !(await sameState(engine, own, newest));
  const states = isNews ? [own, ...committed.states] : committed.states;
  const asked = committed.asked + (isNews ? 1 : 0);
  if (asked > limit) return { states, asked: limit, end: { kind: 'limit' } };
  return { states, asked, end: was === null ? { kind: 'uncommitted' } : await endOf(committed, repository, since) };
}

const noStates: States = { states: [], asked: 0, end: 'came' };

async function isThere(work: FileSource, path: string): Promise<boolean> {
  return (await work.contentId(path)) !== null;
}

/** Where HEAD has the gloss, which may lie elsewhere in the working copy; null: it was never committed. */
async function committedPath(
  engine: RevisionEngine,
  repository: Repository,
  head: string,
  work: FileSource,
  path: string,
): Promise<string | null> {
  const source = await repository.source(head, 'HEAD');
  // What is nowhere now may have been there once.
  if ((await source.contentId(path)) !== null || !(await isThere(work, path))) return path;
  const gone: string[] = [];
  for (const name of (await repository.tree(head)).keys()) {
    const at = `${repository.top}/${name}`;
    if (name.endsWith('.gloss') && !(await isThere(work, at))) gone.push(at);
  }
  const both = { old: gone, new: [path] };
  return (await movedGlosses(engine, source, work, both)).get(path) ?? null;
}

async function committedStates(
  engine: RevisionEngine,
  repository: Repository,
  head: string,
  base: string | null,
  path: string,
  limit: number,
): Promise<States> {
  const ancestry = await GitAncestry.from(repository, head, base);
  if (ancestry !== null) return statesOf(engine, ancestry, path, limit);
  // Nothing came after it: what HEAD has is there to compare the working copy with.
  const state = await stateOf(engine, await repository.source(head, 'HEAD'), path, null);
  return { states: [state], asked: 0, end: 'since' };
}

async function endOf({ end }: States, repository: Repository, since: string | null): Promise<HistoryEnd> {
  if (end === 'limit') return { kind: 'limit' };
  if (end === 'since') return { kind: 'since', revision: since! };
  return { kind: end === 'no parent' && (await repository.shallow()) ? 'shallow' : 'begins' };
}
