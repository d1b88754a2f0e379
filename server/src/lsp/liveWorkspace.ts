import type { Host } from '../base/host';
import { SeenFiles } from '../features/files/seenFiles';
import { TextPositions } from '../features/positions';
import { defaultSettings, type Settings } from '../features/settings';
import type { GlossDocument, GlossText, Results, Workspace } from '../features/workspace';
import { Evaluations } from './evaluations';
import { OpenTexts, type OpenText } from './openTexts';
import type { Outside } from './outside';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';

/** What happens in the workspace, for whoever tells the client. */
export interface Happenings {
  finished(uri: string, results: Results): void;
  started(uri: string): void;
  /** What was started is over: finished, called off or failed. */
  ended(uri: string): void;
  closed(uri: string): void;
  fault(what: string, error: unknown): void;
}

/** Open texts, their evaluations and the files around them: the one place that holds state. */
export class LiveWorkspace implements Workspace {
  readonly texts = new OpenTexts();
  readonly evaluations: Evaluations;
  private readonly seen = new SeenFiles();
  /** Found once; files that come and go are told by the client. */
  private glossPaths: Promise<readonly string[]> | null = null;
  private readonly perUri = new Map<string, Settings>();
  private readonly documents = new Map<string, { readonly text: string; readonly document: Promise<GlossDocument> }>();

  constructor(
    readonly outside: Outside,
    private readonly happenings: Happenings,
  ) {
    this.evaluations = new Evaluations(
      {
        document: (uri) => this.document(uri),
        checked: ({ path }, snapshot) => this.outside.project(path).approvals.checked(snapshot),
        versionOf: (uri) => this.texts.get(uri)?.version ?? null,
        finished: (uri, results) => {
          const { host } = this.outside.project(results.gloss.path);
          this.seen.note(
            results,
            (file) => host.resolve(results.gloss.path, file),
            (path) => host.display(path),
          );
          happenings.finished(uri, results);
        },
        started: (uri) => happenings.started(uri),
        ended: (uri) => happenings.ended(uri),
        failed: (uri, error) => happenings.fault(`evaluating ${uri}`, error),
      },
      outside.timers,
    );
  }

  open(uri: string, version: number, text: string): void {
    this.texts.open(uri, version, text);
    this.textChanged(uri, text);
    this.evaluations.changed(uri, true);
  }

  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): void {
    const open = this.texts.change(uri, version, changes);
    if (open === null) return;
    this.textChanged(uri, open.text);
    this.evaluations.changed(uri, this.settings(uri).refresh === 'onType');
  }

  save(uri: string): void {
    this.outside.forgetAuthors();
    if (this.texts.get(uri) !== null && this.settings(uri).refresh !== 'manual') this.evaluations.changed(uri, true);
  }

  /** Computes now, whatever the setting says. */
  evaluate(uri: string): Promise<Results | null> {
    this.evaluations.changed(uri, true);
    return this.evaluations.current(uri);
  }

  close(uri: string): void {
    this.texts.close(uri);
    this.documents.delete(uri);
    this.evaluations.close(uri);
    this.perUri.delete(uri);
    const path = this.outside.pathOf(uri);
    if (path !== null) {
      this.outside.project(path).setText(path, null);
      this.fileChanged(path);
    }
    this.happenings.closed(uri);
  }

  /** Files changed outside the editor, or the set of files did: everything open is looked at again. */
  filesChanged(uris: readonly string[]): void {
    this.glossPaths = null;
    this.outside.forgetAuthors();
    // The log that git writes when another commit is checked out: no file that anything is computed from.
    const isLog = (uri: string): boolean => uri.endsWith('/logs/HEAD');
    const commits = uris.some(isLog);
    if (commits) this.outside.revisions?.forget();
    // An open text stands for its file: that it was saved changes nothing.
    const others = uris.filter((uri) => this.texts.get(uri) === null && !isLog(uri));
    if (others.length === 0 && !commits) return;
    for (const uri of others) {
      const path = this.outside.pathOf(uri);
      if (path !== null) this.outside.project(path).engine.invalidate(path);
    }
    this.refreshAll();
  }

  refreshAll(): void {
    this.glossPaths = null;
    this.documents.clear();
    for (const { uri, text } of this.texts.all()) {
      // With other root folders it may belong to another project.
      const path = this.outside.pathOf(uri);
      if (path !== null) this.outside.project(path).setText(path, text);
      this.evaluations.changed(uri, this.settings(uri).refresh !== 'manual');
    }
  }

  setSettings(uri: string, settings: Settings): void {
    this.perUri.set(uri, settings);
  }

  settings(uri: string): Settings {
    return this.perUri.get(uri) ?? defaultSettings;
  }

  document(uri: string): Promise<GlossDocument | null> {
    const open = this.texts.get(uri);
    const path = open === null ? null : this.outside.pathOf(uri);
    if (open === null || path === null) return Promise.resolve(null);
    const known = this.documents.get(uri);
    if (known?.text === open.text) return known.document.then((d) => ({ ...d, version: open.version }));
    const document = this.resolved(open, path);
    this.documents.set(uri, { text: open.text, document });
    document.catch(() => this.documents.delete(uri));
    return document;
  }

  results(uri: string): Results | null {
    return this.evaluations.results(uri);
  }

  currentResults(uri: string): Promise<Results | null> {
    // Where computing waits for the save or for a command, asking does not start it.
    if (this.settings(uri).refresh !== 'onType' && !this.evaluations.computing(uri)) {
      const last = this.results(uri);
      return Promise.resolve(last?.version === this.texts.get(uri)?.version ? last : null);
    }
    return this.evaluations.current(uri);
  }

  async glosses(): Promise<readonly GlossText[]> {
    this.glossPaths ??= this.outside.glossFiles();
    const paths = new Set(await this.glossPaths);
    for (const { uri } of this.texts.all()) {
      const path = this.outside.pathOf(uri);
      if (path !== null) paths.add(path);
    }
    const texts = await Promise.all([...paths].sort().map((path) => this.glossAt(path)));
    return texts.filter((t) => t !== null);
  }

  async glossAt(path: string): Promise<GlossText | null> {
    const open = this.openAt(path);
    const uri = open?.uri ?? this.outside.uriOf(path);
    const { engine } = this.outside.project(path);
    const text = open?.text ?? (await engine.text(path));
    if (text === null) return null;
    return {
      uri,
      path,
      version: open?.version ?? null,
      text,
      tree: engine.meaning(text, null).tree,
      positions: open?.positions ?? new TextPositions(text, this.texts.encoding),
    };
  }

  /** Of a path whose text is open; null: its file stands for itself. */
  openText(path: string): string | null {
    return this.openAt(path)?.text ?? null;
  }

  uriOf(path: string): string {
    return this.outside.uriOf(path);
  }

  pathOf(uri: string): string | null {
    return this.outside.pathOf(uri);
  }

  hostOf(path: string): Host | null {
    return this.outside.project(path).host;
  }

  identitySeen(path: string): string | null {
    return this.seen.identityOf(path);
  }

  pageOf(code: string): string | null {
    return this.outside.pageOf(code);
  }

  /** The open text of a path; a new text without a file has one too. */
  private openAt(path: string): OpenText | null {
    const usual = this.texts.get(this.outside.uriOf(path));
    return usual ?? this.texts.all().find(({ uri }) => this.outside.pathOf(uri) === path) ?? null;
  }

  private async resolved(open: OpenText, path: string): Promise<GlossDocument> {
    const project = this.outside.project(path);
    const { tree } = project.engine.meaning(open.text, null);
    const used = tree.statements.find((s) => s.statement?.kind === 'use method')?.statement;
    const file = used?.kind === 'use method' && tree.role === 'run' ? used.file : null;
    const method = file === null ? null : await this.glossAt(project.host.resolve(path, file));
    const { program } = project.engine.meaning(open.text, method?.text ?? null);
    return {
      uri: open.uri,
      path,
      version: open.version,
      text: open.text,
      tree,
      positions: open.positions,
      method,
      program,
      project,
    };
  }

  /** The open text stands for its file; glosses that import it are looked at again. */
  private textChanged(uri: string, text: string): void {
    const path = this.outside.pathOf(uri);
    if (path === null) return;
    this.outside.project(path).setText(path, text);
    this.fileChanged(path, uri);
  }

  private fileChanged(path: string, except: string | null = null): void {
    this.outside.project(path).engine.invalidate(path);
    for (const open of this.texts.all()) {
      if (open.uri === except || !this.names(open, path)) continue;
      this.documents.delete(open.uri);
      this.evaluations.changed(open.uri, this.settings(open.uri).refresh !== 'manual');
    }
  }

  /** True where a statement of the open text names the file. */
  private names(open: OpenText, path: string): boolean {
    const own = this.outside.pathOf(open.uri);
    if (own === null) return false;
    const { engine, host } = this.outside.project(own);
    return engine.meaning(open.text, null).tree.statements.some(({ statement: s }) => {
      const file = s !== null && 'file' in s ? s.file : null;
      return typeof file === 'string' && host.resolve(own, file) === path;
    });
  }
}
