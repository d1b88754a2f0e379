import type { FileSource } from '../../base/source';
import type { NamedRevision } from '../../host/namedRevision';
import { WorkSource } from '../../host/workSource';
import type { DiffModel } from '../../presentation/diff/model';
import { defaultTolerance } from '../../presentation/diff/tolerance';
import { compareAll } from '../../revisions/compareAll';
import { movedGlosses } from '../../revisions/movedGlosses';
import type { RevisionEngine } from '../../revisions/revisionEngine';
import { goneGlosses, type OpenAt, type RevisionPlace } from './revisionPlace';
import type { Spellings } from './spellings';
import type { Subjects } from './subjects';

export interface RevisionComparison {
  readonly model: DiffModel;
  /** Top folder of the repository, which the paths shown are relative to. */
  readonly top: string;
  readonly commit: string | null;
  /** Name of the old side that stays with its files. */
  readonly lasting: string;
  /** A path of the model as the editor spells it. */
  readonly ofEditor: (path: string) => string;
}

/** What is open in the editor. */
export interface OpenNow {
  readonly at: OpenAt;
  readonly paths: readonly string[];
}

/** Glosses as they stand in the editor and the folder, compared with a revision. */
export async function compareWithRevision(
  place: RevisionPlace,
  named: NamedRevision,
  asked: Subjects,
  openNow: OpenNow,
): Promise<RevisionComparison> {
  const { engine, repository, spellings } = place;
  const { paths, method } = asked;
  const subjects = {
    paths: paths.map((p) => spellings.ofGit(p)),
    method: method === null ? null : spellings.ofGit(method),
  };
  const open = spelledAsGit(openNow, spellings);
  const from = await named.source();
  const label = (await unsaved(repository.top, open)) ? 'working copy with unsaved texts' : undefined;
  const to = new WorkSource(repository.top, open.at, label);
  const there: string[] = [];
  for (const path of subjects.paths) if ((await from.contentId(path)) !== null) there.push(path);
  // Looked for only where it can matter: a folder may hold thousands of glosses.
  const wanted = there.length < subjects.paths.length || subjects.method !== null;
  const gone = wanted ? await goneGlosses(place, named, to) : [];
  const moved = await movedGlosses(engine, from, to, { old: [...there, ...gone], new: subjects.paths });
  const went = await goneUsers(engine, from, gone, subjects.method);
  const old = [...new Set([...there, ...moved.values(), ...went])];
  const options = { tolerance: defaultTolerance, bytes: (text: string) => Buffer.from(text, 'utf8'), causes: true };
  const model = await compareAll(engine, from, to, { old, new: subjects.paths }, options);
  const ofEditor = (path: string): string => spellings.ofEditor(path);
  return { model, top: repository.top, commit: named.commit, lasting: named.lasting, ofEditor };
}

function spelledAsGit({ at, paths }: OpenNow, spellings: Spellings): OpenNow {
  const spelled = new Map(paths.map((path) => [spellings.ofGit(path), path]));
  return { at: (path) => (spelled.has(path) ? at(spelled.get(path)!) : null), paths: [...spelled.keys()] };
}

/** True where an open text differs from its file. */
async function unsaved(top: string, open: OpenNow): Promise<boolean> {
  const files = new WorkSource(top);
  const texts = new WorkSource(top, open.at);
  for (const path of open.paths.filter((p) => p.startsWith(`${top}/`))) {
    if ((await files.contentId(path)) !== (await texts.contentId(path))) return true;
  }
  return false;
}

/** Of glosses that are gone, those that named the method. */
async function goneUsers(
  engine: RevisionEngine,
  from: FileSource,
  gone: readonly string[],
  method: string | null,
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const path of method === null ? [] : gone) {
    const text = await engine.text(from, path);
    const statements = text === null ? [] : engine.engine.meaning(text, null).tree.statements;
    const names = statements.some(
      ({ statement: s }) => s?.kind === 'use method' && engine.host.resolve(path, s.file) === method,
    );
    if (names) found.push(path);
  }
  return found;
}
