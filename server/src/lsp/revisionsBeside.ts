import { Repository } from '../host/repository';
import { withSlashes } from '../host/root';
import { SourceHost } from '../host/sourceHost';
import { RevisionEngine } from '../revisions/revisionEngine';
import { sideOf, type Side } from '../revisions/side';
import type { Engine } from '../engine/engine';
import type { Timers } from './timers';

/** A gloss as it was at a revision, evaluated; `side` null: it was not there. */
export interface Committed {
  readonly commit: string;
  readonly side: Side | null;
  readonly engine: Engine;
}

/** For so long a branch or HEAD is taken to name the same commit (ms): typing does not start git at every key. */
const lasting = 3000;

/** Glosses at other revisions of their repository, evaluated once a commit. */
export class RevisionsBeside {
  private readonly opened = new Map<string, Promise<{ repository: Repository; engine: RevisionEngine } | null>>();
  private readonly commits = new Map<string, Promise<string | null>>();
  private readonly sides = new Map<string, Promise<Committed>>();

  constructor(private readonly timers: Timers) {}

  /** Whatever HEAD and branches named is asked again. */
  forget(): void {
    this.commits.clear();
  }

  /** null: no repository, no git program, or no such revision. */
  async at(root: string, path: string, revision: string): Promise<Committed | null> {
    const place = await this.open(root);
    if (place === null) return null;
    const { repository, engine } = place;
    const commit = await this.commit(repository, revision);
    if (commit === null) return null;
    const key = `${commit} ${path}`;
    const known = this.sides.get(key);
    if (known !== undefined) return known;
    const made = this.evaluate(repository, engine, commit, revision, path);
    this.sides.set(key, made);
    made.catch(() => this.sides.delete(key));
    if (this.sides.size > 200) this.sides.delete(this.sides.keys().next().value!);
    return made;
  }

  private async evaluate(
    repository: Repository,
    engine: RevisionEngine,
    commit: string,
    revision: string,
    path: string,
  ): Promise<Committed> {
    const source = await repository.source(commit, revision);
    return { commit, side: await sideOf(engine, source, withSlashes(path)), engine: engine.engine };
  }

  private open(root: string): Promise<{ repository: Repository; engine: RevisionEngine } | null> {
    const known = this.opened.get(root);
    if (known !== undefined) return known;
    const made = Repository.open(root).then(async (repository) => {
      if (repository === null) return null;
      const head = await repository.commit('HEAD');
      if (head === null) return null;
      const host = new SourceHost(repository.top, await repository.source(head, 'HEAD'));
      return { repository, engine: new RevisionEngine(host) };
    });
    this.opened.set(root, made);
    return made;
  }

  private commit(repository: Repository, revision: string): Promise<string | null> {
    const key = `${repository.top} ${revision}`;
    const known = this.commits.get(key);
    if (known !== undefined) return known;
    const made = repository.commit(revision);
    this.commits.set(key, made);
    this.timers.after(lasting, () => this.commits.delete(key));
    return made;
  }
}
