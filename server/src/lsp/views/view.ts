import type { WatchParams } from '../../protocol/messages';
import type { Freshness, ViewState } from '../../protocol/view';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Committed } from '../revisionsBeside';
import { compose } from './composer';
import { brokenNames, computingWords, currentWords, firstError, staleWords } from './freshness';
import { groundOf, usersOf } from './grounds';
import type { Ground, Picture } from './picture';

/** Pictures kept, so that what was asked of the one before the last is still answered. */
const kept = 3;
/** A computing that takes no longer is not told (checklist L6). */
const quiet = 200;

/** One panel's view of one gloss: what was sent for it, and when to send anew. */
export class View {
  private pictures: Picture[] = [];
  private good: { readonly ground: Ground; readonly revision: number } | null = null;
  private run = 0;
  private callOff: () => void = () => undefined;
  private closed = false;
  private beside: { readonly key: string; readonly committed: Committed | null } | null = null;
  /** URIs whose results this view shows. */
  private shown: ReadonlySet<string> = new Set();

  constructor(
    private watched: WatchParams,
    private readonly workspace: LiveWorkspace,
    /** The number of the next picture, counted over all views: a number names one picture of one view. */
    private readonly nextRevision: () => number,
    private readonly send: (state: ViewState) => void,
  ) {}

  get uri(): string {
    return this.watched.uri;
  }

  /** Other choices, another gloss. */
  change(watched: WatchParams): Promise<void> {
    if (watched.uri !== this.watched.uri) {
      this.good = null;
      this.pictures = [];
    }
    this.watched = watched;
    return this.refresh();
  }

  concerns(uri: string): boolean {
    return uri === this.watched.uri || this.shown.has(uri) || this.watched.choices.overlays.includes(uri);
  }

  /** Its gloss is being computed: told where it takes long enough to be noticed. */
  computing(): void {
    this.callOff();
    this.callOff = this.workspace.outside.timers.after(quiet, () => {
      const last = this.pictures[0];
      if (this.closed || last === undefined) return;
      this.tell(last, computingWords(this.good?.revision ?? 0));
    });
  }

  /** The picture with a generation; null: it is too old. */
  picture(revision: number): Picture | null {
    return this.pictures.find((p) => p.state.generation.revision === revision) ?? null;
  }

  close(): void {
    this.closed = true;
    this.callOff();
  }

  /** Evaluates what is shown and sends it; a refresh that is overtaken sends nothing. */
  async refresh(): Promise<void> {
    const turn = (this.run += 1);
    const { watched, workspace } = this;
    const { uri, role } = await this.subject();
    const ground = uri === null ? null : await groundOf(workspace, uri, watched.choices.abscissa);
    if (this.closed || turn !== this.run) return;
    this.callOff();
    const version = workspace.texts.get(watched.uri)?.version ?? 0;
    const { drawn, freshness } = this.judge(ground);
    const generation = { uri: watched.uri, version, revision: this.nextRevision() };
    const committed = drawn === null ? null : this.committed(drawn);
    const picture = await compose(workspace, watched, drawn, role, generation, freshness, committed);
    if (this.closed || turn !== this.run) return;
    if (freshness.state === 'current' && ground !== null && ground.curves !== null) {
      this.good = { ground, revision: generation.revision };
    }
    this.shown = new Set([picture.ground?.gloss.uri ?? watched.uri, ...(ground === null ? [] : [ground.gloss.uri])]);
    this.pictures = [picture, ...this.pictures].slice(0, kept);
    this.send(picture.state);
  }

  /** The run gloss whose numbers are shown: of a method, the run chosen among those that name it. */
  private async subject(): Promise<{ readonly uri: string | null; readonly role: 'run' | 'method' }> {
    const { workspace, watched } = this;
    const path = workspace.pathOf(watched.uri);
    const text = path === null ? null : await workspace.glossAt(path);
    if (path === null || text?.tree.role !== 'method') return { uri: watched.uri, role: 'run' };
    const users = await usersOf(workspace, path);
    const chosen = users.find((u) => u.uri === watched.choices.run) ?? users[0];
    return { uri: chosen?.uri ?? null, role: 'method' };
  }

  /** What is drawn: the new ground, or the last good one while a line it shows cannot be read. */
  private judge(ground: Ground | null): { readonly drawn: Ground | null; readonly freshness: Freshness } {
    const { good } = this;
    if (ground === null) {
      if (good !== null) return { drawn: good.ground, freshness: staleWords(good.revision, null) };
      return { drawn: null, freshness: { state: 'empty', text: 'nothing to show', error: null } };
    }
    const error = firstError(ground.snapshot, ground.gloss, ground.method);
    if (good !== null && (ground.curves === null || this.lost(ground).length > 0)) {
      return { drawn: good.ground, freshness: staleWords(good.revision, error) };
    }
    if (ground.curves === null) return { drawn: ground, freshness: { state: 'empty', text: 'no curves yet', error } };
    return { drawn: ground, freshness: currentWords(error) };
  }

  /** The revision compared with, as far as it is evaluated: the first picture does not wait for git. */
  private committed(ground: Ground): Committed | null {
    const { revisions } = this.workspace.outside;
    if (revisions === null) return null;
    const { path } = ground.gloss;
    const revision = this.watched.choices.against ?? 'HEAD';
    const key = `${revision} ${path}`;
    const known = this.beside?.key === key ? this.beside.committed : null;
    void revisions.at(this.workspace.outside.project(path).root, path, revision).then(
      (found) => {
        const same = this.beside?.key === key && this.beside.committed?.commit === found?.commit;
        if (same || this.closed) return;
        this.beside = { key, committed: found };
        if (found !== null) void this.refresh();
      },
      () => (this.beside = { key, committed: null }),
    );
    return known;
  }

  /** Statements the last good picture shows and the text cannot say any more. */
  private lost(ground: Ground): readonly string[] {
    const names = new Set(this.good?.ground.snapshot.results.map((r) => r.name) ?? []);
    return brokenNames(ground.snapshot).filter((name) => names.has(name));
  }

  /** The same picture with other words; it keeps its curves and gets a new number. */
  private tell(picture: Picture, freshness: Freshness): void {
    const generation = { ...picture.state.generation, revision: this.nextRevision() };
    const next: Picture = { ...picture, state: { ...picture.state, generation, freshness } };
    this.pictures = [next, ...this.pictures].slice(0, kept);
    this.send(next.state);
  }
}
