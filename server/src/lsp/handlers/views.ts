import type { Connection, Position } from 'vscode-languageserver';
import { draftGloss } from '../../engine/draft';
import { statementOfLine } from '../../features/statements';
import { ledgerOf } from '../../presentation/plot/ledger';
import { ledgerCsv, ledgerHtml, ledgerMarkdown, ledgerTsv } from '../../presentation/plot/ledgerTables';
import { oneGlossText } from '../../presentation/oneGloss';
import { plural } from '../../presentation/plural';
import {
  method,
  type DraftAnswer,
  type StatusParams,
  type StateParams,
  type WatchParams,
} from '../../protocol/messages';
import type {
  CursorAnswer,
  CursorRequest,
  EdgeEdit,
  EdgePreview,
  EdgeRequest,
  SamplesAnswer,
  SamplesRequest,
  TextRange,
} from '../../protocol/view';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import { edgeEditOf, edgePreviewOf } from '../views/edges';
import { cursorReading, samplesAnswer } from '../views/answers';
import { View } from '../views/view';
import type { Picture } from '../views/picture';
import type { Guard } from './guard';

/** The curves view and what goes with it, beyond the standard protocol. */
export function registerViews(
  connection: Connection,
  workspace: LiveWorkspace,
  guard: Guard,
  client: ClientState,
  fault: (what: string, error: unknown) => void,
): Views {
  const views = new Views(workspace, (id, state) => void connection.sendNotification(method.state, { id, state }));
  const refreshed = (what: string, work: Promise<void>): void => void work.catch((e: unknown) => fault(what, e));

  connection.onRequest(
    method.watch,
    guard<WatchParams, null>('watch', null, async (params) => {
      await views.watch(params);
      return null;
    }),
  );
  connection.onNotification(method.unwatch, ({ id }: { id: string }) => views.unwatch(id));
  connection.onRequest(
    method.samples,
    guard<SamplesRequest, SamplesAnswer | null>('samples', null, (request) => {
      const picture = views.picture(request.generation.uri, request.generation.revision);
      return picture === null ? null : samplesAnswer(picture, request);
    }),
  );
  connection.onRequest(
    method.cursor,
    guard<CursorRequest, CursorAnswer | null>('cursor', null, (request) => {
      const picture = views.picture(request.generation.uri, request.generation.revision);
      return picture === null ? null : cursorReading(picture, request);
    }),
  );
  connection.onRequest(
    method.edgePreview,
    guard<EdgeRequest, EdgePreview | null>('preview of an edge', null, async (request) => {
      const picture = views.picture(request.generation.uri, request.generation.revision);
      return picture === null ? null : edgePreviewOf(workspace, picture, request);
    }),
  );
  connection.onRequest(
    method.edgeEdit,
    guard<EdgeRequest, EdgeEdit | null>('edit of an edge', null, async (request) => {
      const picture = views.picture(request.generation.uri, request.generation.revision);
      if (picture === null)
        return { ok: false, reason: 'The picture has changed since the move began: move it again.' };
      return edgeEditOf(workspace, picture, request);
    }),
  );
  connection.onRequest(
    method.statementAt,
    guard<{ uri: string; position: Position }, { statement: string } | null>('statement', null, async (p) => {
      const document = await workspace.document(p.uri);
      const node = document === null ? null : statementOfLine(document.tree, document.positions.offset(p.position));
      return node === null ? null : { statement: node.id };
    }),
  );
  connection.onRequest(
    method.locate,
    guard<{ uri: string; statement: string }, { uri: string; range: TextRange } | null>('locate', null, async (p) => {
      const path = workspace.pathOf(p.uri);
      const own = path === null ? null : await workspace.glossAt(path);
      if (own === null) return null;
      const document = await workspace.document(p.uri);
      const texts = [own, ...(document?.method ? [document.method] : [])];
      for (const text of texts) {
        const node = text.tree.statements.find((s) => s.id === p.statement);
        if (node !== undefined)
          return { uri: text.uri, range: text.positions.range(node.tokens.get('head') ?? node.span) };
      }
      return null;
    }),
  );
  connection.onRequest(
    method.draft,
    guard<{ path: string; method: string | null }, DraftAnswer>(
      'draft',
      { ok: false, message: 'The draft failed; the log says why.' },
      async (p) => {
        const path = workspace.pathOf(p.path);
        if (path === null) return { ok: false, message: 'The run is no file that can be read.' };
        const { host } = workspace.outside.project(path);
        const drafted = await draftGloss(host, path, p.method === null ? {} : { method: p.method });
        if (!drafted.ok) return { ok: false, message: drafted.failure.message };
        const uri = workspace.uriOf(path.replace(/\.[^./]*$/, '.gloss'));
        return { ok: true, text: drafted.value.text, uri, notes: drafted.value.notes };
      },
    ),
  );
  connection.onRequest(
    method.table,
    guard<{ uri: string; format: string }, { text: string } | null>('table', null, async ({ uri, format }) => {
      const results = (await workspace.currentResults(uri)) ?? workspace.results(uri);
      if (results === null) return null;
      if (format === 'text') return { text: oneGlossText(results.snapshot, { all: false }) };
      const ledger = ledgerOf(results.snapshot);
      const write = { tsv: ledgerTsv, html: ledgerHtml, csv: ledgerCsv, markdown: ledgerMarkdown }[format];
      return write === undefined ? null : { text: write(ledger) };
    }),
  );
  connection.onRequest(
    method.evaluate,
    guard<{ uri: string }, null>('evaluate', null, async ({ uri }) => {
      await workspace.evaluate(uri);
      return null;
    }),
  );

  const status = (uri: string, computing: boolean): void => {
    const results = workspace.results(uri);
    const standing = results?.snapshot.findings.filter((f) => f.allowed === null) ?? [];
    const errors = standing.filter((f) => f.severity === 'error').length;
    const warnings = standing.filter((f) => f.severity === 'warning').length;
    const count = results?.snapshot.results.length ?? 0;
    const parts = [plural(count, 'result'), plural(errors, 'error'), plural(warnings, 'warning')];
    const params: StatusParams = {
      uri,
      version: workspace.texts.get(uri)?.version ?? results?.version ?? 0,
      computing,
      errors,
      warnings,
      text: parts.filter((t) => t !== null).join(', ') || 'no results',
    };
    void connection.sendNotification(method.status, params);
  };
  client.onStarted.push((uri) => {
    status(uri, true);
    views.started(uri);
  });
  client.onFinished.push((uri) => {
    status(uri, false);
    refreshed('view', views.finished(uri));
  });
  return views;
}

/** The views of all panels. */
export class Views {
  private readonly byId = new Map<string, View>();
  private revision = 0;

  constructor(
    private readonly workspace: LiveWorkspace,
    private readonly send: (id: string, state: StateParams['state']) => void,
  ) {}

  watch(params: WatchParams): Promise<void> {
    // A server that took the place of a lost one goes on behind what its client has seen.
    this.revision = Math.max(this.revision, params.after ?? 0);
    const known = this.byId.get(params.id);
    if (known !== undefined) return known.change(params);
    const next = (): number => (this.revision += 1);
    const view = new View(params, this.workspace, next, (state) => this.send(params.id, state));
    this.byId.set(params.id, view);
    return view.refresh();
  }

  unwatch(id: string): void {
    this.byId.get(id)?.close();
    this.byId.delete(id);
  }

  picture(uri: string, revision: number): Picture | null {
    for (const view of this.byId.values()) {
      const found = view.uri === uri ? view.picture(revision) : null;
      if (found !== null) return found;
    }
    return null;
  }

  started(uri: string): void {
    for (const view of this.byId.values()) if (view.concerns(uri)) view.computing();
  }

  async finished(uri: string): Promise<void> {
    await Promise.all([...this.byId.values()].filter((v) => v.concerns(uri)).map((v) => v.refresh()));
  }

  async filesChanged(): Promise<void> {
    await Promise.all([...this.byId.values()].map((v) => v.refresh()));
  }
}
