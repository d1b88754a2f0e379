import type { FileSource } from '../base/source';
import { GitAncestry } from '../host/gitAncestry';
import type { Repository } from '../host/repository';
import type { HistoryEnd } from '../presentation/history/model';
import { movedGlosses } from '../revisions/movedGlosses';
import type { RevisionEngine } from '../revisions/revisionEngine';
import { sameState, stateOf, statesOf, type States } from '../revisions/states';
import { Trouble } from './exitCodes';
import type { HistoryWish } from './historyArguments';

export interface WantedStates extends Omit<States, 'end' | 'last' | 'unread'> {
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
  const was = head === null ? path : await committedPath(engine, repository, head, work, path);
  const committed = head === null ? null : await committedStates(engine, repository, head, base, was, limit);
  const own = await stateOf(engine, work, path, null);
  const older = committed?.states ?? [];
  const newest = older.at(0);
  const isNews = newest === undefined ? await isThere(work, path) : !(await sameState(engine, own, newest));
  const states = isNews ? [own, ...older] : older;
  const asked = (committed?.asked ?? 0) + (isNews ? 1 : 0);
  if (asked > limit) return { states, asked: limit, end: { kind: 'limit' } };
  if (committed === null || older.length === 0) return { states, asked, end: { kind: 'uncommitted' } };
  return { states, asked, end: await endOf(committed, repository, since) };
}

async function isThere(work: FileSource, path: string): Promise<boolean> {
  return (await work.contentId(path)) !== null;
}

/** Where HEAD has the gloss, which may lie elsewhere in the working copy; its own path where HEAD has none like it. */
async function committedPath(
  engine: RevisionEngine,
  repository: Repository,
  head: string,
  work: FileSource,
  path: string,
): Promise<string> {
  const source = await repository.source(head, 'HEAD');
  // What is nowhere now may have been there once.
  if ((await source.contentId(path)) !== null || !(await isThere(work, path))) return path;
  const gone: string[] = [];
  for (const name of (await repository.tree(head)).keys()) {
    const at = `${repository.top}/${name}`;
    if (name.endsWith('.gloss') && !(await isThere(work, at))) gone.push(at);
  }
  const both = { old: gone, new: [path] };
  return (await movedGlosses(engine, source, work, both)).get(path) ?? path;
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
  const last = state.revision ?? { commit: head, short: head.slice(0, 7), date: '', author: '' };
  return { states: [state], asked: 0, end: 'since', last };
}

async function endOf({ end, last, unread }: States, repository: Repository, since: string | null): Promise<HistoryEnd> {
  if (end === 'limit') return { kind: 'limit' };
  if (end === 'unread') return { kind: 'content', message: unread! };
  if (end === 'since') return { kind: 'since', revision: since! };
  return (await repository.shallow()) ? { kind: 'shallow', from: last.short } : { kind: 'begins' };
}
