import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import { namedRevision, type NamedRevision } from '../host/namedRevision';
import { Repository } from '../host/repository';
import { SourceHost } from '../host/sourceHost';
import { WorkSource } from '../host/workSource';
import { movedGlosses } from '../revisions/movedGlosses';
import { revisionWords } from '../revisions/revisionWords';
import { RevisionEngine } from '../revisions/revisionEngine';
import { sideOf, type Side } from '../revisions/side';
import type { RevisionNames } from '../protocol/compare';
import { goneGlosses, type OpenAt, type RevisionPlace } from './compare/revisionPlace';
import { Spellings } from './compare/spellings';
import type { Subjects } from './compare/subjects';
import { compareWithRevision, type OpenNow, type RevisionComparison } from './compare/withRevision';
import type { Timers } from './timers';

/** A gloss as it was at a revision, evaluated; `side` null: it was not there. */
export interface Committed {
  /** The same for the same files. */
  readonly key: string;
  /** `HEAD`, `merge base of main and HEAD`. */
  readonly label: string;
  readonly side: Side | null;
  readonly engine: Engine;
}

/** For so long a branch or HEAD is taken to name the same commit (ms): typing does not start git at every key. */
const lasting = 3000;
/** Evaluations of revisions kept at once. */
const mostSides = 200;

/** Glosses at other revisions of their repository, evaluated once a commit. Paths come and go as the editor spells them. */
export class RevisionsBeside {
  private readonly opened = new Map<string, Promise<RevisionPlace | null>>();
  private readonly names = new Map<string, Promise<NamedRevision | null>>();
  private readonly sides = new Map<string, Promise<Side | null>>();

  constructor(private readonly timers: Timers) {}

  /** Whatever HEAD and branches named is asked again. */
  forget(): void {
    this.names.clear();
  }

  /**
   * A gloss at a revision, by the names of `namedRevision`; under its former path where it has moved since. null: no
   * repository, no git program, or no such revision.
   */
  async at(root: string, path: string, revision: string, open: OpenAt = () => null): Promise<Committed | null> {
    const place = await this.open(root);
    const named = place === null ? null : await this.named(place, revision);
    if (place === null || named === null) return null;
    const { spellings } = place;
    const openAt: OpenAt = (at) => open(spellings.ofEditor(at));
    const former = await this.formerPath(place, named, spellings.ofGit(path), openAt);
    const side = former === null ? null : await this.side(place, named, former);
    return { key: `${named.key} ${former ?? ''}`, label: named.label, side, engine: place.engine.engine };
  }

  /** Glosses as they stand, compared with a revision; a text: why they are not. */
  async compare(root: string, subjects: Subjects, name: string, open: OpenNow): Promise<RevisionComparison | string> {
    const place = await this.open(root);
    if (place === null) return 'The gloss is in no git repository with a commit, or there is no git program.';
    this.forget();
    const named = await this.named(place, name);
    if (named === null) return `${name} names no revision of this repository.`;
    return compareWithRevision(place, named, subjects, open);
  }

  /** Names to choose from; null as of `open`. */
  async refs(root: string): Promise<RevisionNames | null> {
    return (await (await this.open(root))?.repository.refs()) ?? null;
  }

  /** A text at a revision; null: there is none. */
  async text(root: string, path: string, name: string): Promise<string | null> {
    const place = await this.open(root);
    const named = place === null ? null : await this.named(place, name);
    return place === null || named === null
      ? null
      : place.engine.text(await named.source(), place.spellings.ofGit(path));
  }

  /** The commit checked out and what of it is not what was evaluated, in words; null as of `open`. */
  async wordsOf(root: string, snapshot: Snapshot, identity: string | null): Promise<string | null> {
    const place = await this.open(root);
    const { top } = place?.repository ?? { top: '' };
    const commit = (await place?.repository.commit('HEAD')) ?? null;
    if (place === null || commit === null) return null;
    const host = new SourceHost(top, await place.repository.source(commit, 'HEAD'));
    return revisionWords(snapshot, identity, commit, host, top);
  }

  /** null: the folder is in no repository that has a commit, or there is no git program. */
  open(root: string): Promise<RevisionPlace | null> {
    const known = this.opened.get(root);
    if (known !== undefined) return known;
    const made = Repository.open(root).then(async (repository) => {
      const head = repository === null ? null : await repository.commit('HEAD');
      if (repository === null || head === null) return null;
      const host = new SourceHost(repository.top, await repository.source(head, 'HEAD'));
      return { repository, engine: new RevisionEngine(host), spellings: new Spellings(root, repository.top) };
    });
    this.opened.set(root, made);
    // A repository may be made, or get its first commit, later.
    const again = (): void => void this.timers.after(lasting, () => this.opened.delete(root));
    made.then((place) => (place === null ? again() : undefined), again);
    return made;
  }

  private named({ repository }: RevisionPlace, revision: string): Promise<NamedRevision | null> {
    const key = `${repository.top} ${revision}`;
    const known = this.names.get(key);
    if (known !== undefined) return known;
    const made = namedRevision(repository, revision);
    this.names.set(key, made);
    this.timers.after(lasting, () => this.names.delete(key));
    return made;
  }

  /** Where a gloss was at a revision; null: it was not there. */
  private async formerPath(
    place: RevisionPlace,
    named: NamedRevision,
    path: string,
    open: OpenAt,
  ): Promise<string | null> {
    const from = await named.source();
    if ((await from.contentId(path)) !== null) return path;
    const to = new WorkSource(place.repository.top, open);
    const old = await goneGlosses(place, named, to);
    return (await movedGlosses(place.engine, from, to, { old, new: [path] })).get(path) ?? null;
  }

  private side({ engine }: RevisionPlace, named: NamedRevision, path: string): Promise<Side | null> {
    const key = `${named.key} ${path}`;
    const known = this.sides.get(key);
    if (known !== undefined) return known;
    const made = named.source().then((source) => sideOf(engine, source, path));
    this.sides.set(key, made);
    made.catch(() => this.sides.delete(key));
    if (this.sides.size > mostSides) this.sides.delete(this.sides.keys().next().value!);
    return made;
  }
}
