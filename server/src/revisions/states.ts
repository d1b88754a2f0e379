import type { Ancestry, Revision } from '../base/ancestry';
import type { FileSource } from '../base/source';
import { inputsOf } from './inputFiles';
import { movedGlosses } from './movedGlosses';
import type { RevisionEngine } from './revisionEngine';

/** The files of one gloss as one commit left them. */
export interface State {
  /** The commit that brought it; null: nothing has committed it. */
  readonly revision: Revision | null;
  /** Only the first parent's side of a merge is followed. */
  readonly isMerge?: boolean;
  readonly source: FileSource;
  /** Absolute path of the gloss. */
  readonly path: string;
  /** Paths of what takes part, the gloss among them. */
  readonly inputs: readonly string[];
  /** Why a gloss or method among them cannot be read, so that what takes part is not known; null: all can. */
  readonly unread: string | null;
  /** The same only where the same files of the same content take part. */
  readonly key: string;
}

export interface States {
  /** Newest first. */
  readonly states: readonly State[];
  /** So many of them were asked for; one more is what the last of them is compared with. */
  readonly asked: number;
  /** Why there are no more: the commits end, no more were asked for, or what takes part further back cannot be read. */
  readonly end: 'no parent' | 'since' | 'limit' | 'unread';
  /** With `unread`: why. */
  readonly unread?: string;
  /** The last commit looked at. */
  readonly last: Revision;
}

/**
 * Goes back through the commits that touched a gloss or a file that takes part in it, as the gloss names them at that time. Of a
 * merge that parent is followed that left all of them as they are; where every parent differs, the merge is a state of its own
 * and the first parent is followed. Where the gloss is not there, the way goes on to a commit that took it away, which is a
 * state without it. It ends where a text that says what takes part cannot be read: which commits touch that is not known.
 */
export async function statesOf(
  engine: RevisionEngine,
  ancestry: Ancestry,
  path: string,
  limit: number,
): Promise<States> {
  const states: State[] = [];
  let gloss = path;
  for (;;) {
    const state = await stateOf(engine, ancestry.files(ancestry.at.short), gloss, null);
    if (state.unread !== null) {
      states.push({ ...state, revision: ancestry.at });
      return { states, asked: states.length - 1, end: 'unread', unread: state.unread, last: ancestry.at };
    }
    const passed = await ancestry.passed(state.inputs);
    while (followUntouched(ancestry, passed));
    const { at } = ancestry;
    const isThere = (await state.source.contentId(gloss)) !== null;
    // From here back to where the way ends nothing had it.
    if (!isThere && ancestry.parents === 0 && (!ancestry.isOutside || states.length === 0)) {
      return { states, asked: states.length, end: 'no parent', last: at };
    }
    // The same files under the name of the commit that brought them.
    const isMerge = ancestry.parents > 1;
    states.push({ ...state, revision: at, isMerge, source: ancestry.files(at.short) });
    if (ancestry.isOutside) return { states, asked: states.length - 1, end: 'since', last: at };
    if (states.length > limit) return { states, asked: limit, end: 'limit', last: at };
    if (ancestry.parents === 0) return { states, asked: states.length, end: 'no parent', last: at };
    const came = isThere && ancestry.changed(0).get(gloss) === false;
    const moved = came ? await movedFrom(engine, ancestry, gloss) : noMove;
    if (moved.unread !== null) return { states, asked: states.length, end: 'unread', unread: moved.unread, last: at };
    gloss = moved.was ?? gloss;
    ancestry.back(0);
  }
}

interface Moved {
  /** Where a gloss that is new here was at the first parent; null: nowhere. */
  readonly was: string | null;
  /** Why that cannot be told. */
  readonly unread: string | null;
}

const noMove: Moved = { was: null, unread: null };

async function movedFrom(engine: RevisionEngine, ancestry: Ancestry, gloss: string): Promise<Moved> {
  const here = ancestry.files('here');
  const gone: string[] = [];
  for (const [path, had] of ancestry.changed(0)) {
    if (had && path.endsWith('.gloss') && (await here.contentId(path)) === null) gone.push(path);
  }
  if (gone.length === 0) return noMove;
  const named = await ancestry.renamed(0, gloss);
  const renames = new Map(named === null ? [] : [[gloss, named]]);
  const there = ancestry.parentFiles(0);
  const was = (await movedGlosses(engine, there, here, { old: gone, new: [gloss] }, renames)).get(gloss);
  if (was !== undefined) return { was, unread: null };
  const texts = await Promise.all(gone.map((path) => engine.unread(there, path)));
  return { was: null, unread: texts.find((text) => text !== null) ?? null };
}

/** One step to a parent that has the same files; false: there is none. */
function followUntouched(ancestry: Ancestry, inputs: readonly string[]): boolean {
  for (let parent = 0; parent < ancestry.parents; parent++) {
    const changed = ancestry.changed(parent);
    if (inputs.some((path) => changed.has(path))) continue;
    ancestry.back(parent);
    return true;
  }
  return false;
}

/** A gloss as it is in a source. */
export async function stateOf(
  engine: RevisionEngine,
  source: FileSource,
  path: string,
  revision: Revision | null,
): Promise<State> {
  return { revision, source, path, ...(await inputsOf(engine, source, path)) };
}

/** True where two states say the same: line ends and a byte order mark, which git may change when it writes a file, do not count. */
export async function sameState(engine: RevisionEngine, a: State, b: State): Promise<boolean> {
  if (a.key === b.key) return true;
  if (a.path !== b.path || a.inputs.join('\n') !== b.inputs.join('\n')) return false;
  for (const path of a.inputs) {
    if ((await a.source.contentId(path)) === (await b.source.contentId(path))) continue;
    const identity = await engine.identity(a.source, path);
    if (identity === null || identity !== (await engine.identity(b.source, path))) return false;
  }
  return true;
}
