import { commands, l10n, TabInputText, Uri, ViewColumn, window, workspace, type Disposable } from 'vscode';
import type { ExtensionContext, TextEditor, WebviewPanel } from 'vscode';
import { method, type KeptView, type StateParams, type ToView } from '../../../server/src/protocol/messages';
import type { TextRange } from '../../../server/src/protocol/view';
import { hasOwnText, isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import type { ServerState } from '../server/serverState';
import { CaretSync } from './caretSync';
import { columnFor } from './columns';
import { CurvesPanel, newTab, preferences, tabOptions, viewType, type CurvesShared } from './curvesPanel';
import type { Writable } from './editable';
import { vscodeRange } from './edgeWorld';
import { freshView, keptFrom } from './keptView';
import { PanelRegistry } from './panelRegistry';
import type { RevealPlace } from './session';
import { showPlace } from './showPlace';
import { viewCommand } from './viewCommands';

/** All curves views: opened, turned to glosses, told of carets and of the server, and restored after a reload. */
export class CurvesPanels implements Disposable {
  readonly registry = new PanelRegistry<CurvesPanel>();
  private readonly carets: CaretSync<CurvesPanel>;
  private readonly disposables: Disposable[] = [];
  private readonly shared: CurvesShared;
  private count = 0;
  /** For tests in the editor: what was sent to which view. */
  posted: (panel: CurvesPanel, message: ToView) => void = () => undefined;

  constructor(
    private readonly context: ExtensionContext,
    private readonly server: LanguageServer,
    writable: Writable,
    private readonly fault: (message: string) => void,
  ) {
    this.shared = {
      context,
      server,
      writable,
      reveal: (panel, place) => this.reveal(panel, place),
      pin: (panel, pinned) => this.pin(panel, pinned),
      command: viewCommand,
      fault,
      began: (panel) => this.began(panel),
      posted: (panel, message) => this.posted(panel, message),
    };
    this.carets = new CaretSync(
      async (uri, position) => {
        const found = await server.request<{ statement: string }>(method.statementAt, { uri, position });
        return found?.statement ?? null;
      },
      () => this.registry.all,
    );
    server.onNotification<StateParams>(method.state, (params) => {
      for (const panel of this.registry.all) panel.session.serverState(params);
    });
    this.disposables.push(
      server.onState((state) => this.serverState(state)),
      window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: (tab, state) => this.restore(tab, state),
      }),
      window.onDidChangeActiveTextEditor((editor) => this.activeText(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.caretMoved(textEditor)),
      workspace.onDidCloseTextDocument((document) => this.lookFor(document.uri)),
      workspace.onDidDeleteFiles(({ files }) => files.forEach((uri) => this.lookFor(uri))),
      workspace.onDidRenameFiles(({ files }) => files.forEach(({ oldUri, newUri }) => this.renamed(oldUri, newUri))),
      workspace.onDidChangeConfiguration((event) => {
        if (!event.affectsConfiguration('thermogloss')) return;
        for (const panel of this.registry.all) {
          panel.session.preferencesChanged();
          this.caretAgain(panel);
        }
      }),
    );
  }

  /** Shows the curves of a gloss; of the active one where none is named. */
  show(uri: Uri | undefined): CurvesPanel | null {
    const gloss = uri ?? activeGloss();
    if (gloss === undefined || !hasOwnText(gloss)) {
      void window.showInformationMessage(l10n.t('Open a gloss first: its curves are shown beside it.'));
      return null;
    }
    const known = this.registry.forGloss(gloss.toString());
    if (known !== null) {
      known.tab.reveal(undefined, true);
      return known;
    }
    const kept = freshView(gloss.toString(), false, preferences().abscissa);
    return this.add(newTab(this.context, this.column()), kept);
  }

  /** The view in front is kept on its gloss, or follows the active text again. */
  pinActive(pinned: boolean): void {
    const panel = this.registry.all.find((p) => p.tab.active) ?? (pinned ? this.registry.follower : null);
    if (panel !== null) this.pin(panel, pinned);
  }

  /** A gloss, or a folder, came or went on disk. */
  lookFor(uri: Uri): void {
    const address = uri.toString();
    for (const panel of this.registry.all) {
      if (panel.uri === address || panel.uri.startsWith(`${address}/`)) void panel.load();
    }
  }

  dispose(): void {
    this.disposables.forEach((d) => d.dispose());
  }

  private add(tab: WebviewPanel, kept: KeptView): CurvesPanel {
    const panel = new CurvesPanel(`view${++this.count}`, tab, kept, this.shared);
    this.registry.add(panel);
    tab.onDidChangeViewState(() => this.contextAgain());
    tab.onDidDispose(() => {
      this.registry.remove(panel);
      panel.session.dispose();
      this.contextAgain();
    });
    return panel;
  }

  private restore(tab: WebviewPanel, state: unknown): Promise<void> {
    const kept = keptFrom(state, preferences().abscissa);
    tab.webview.options = tabOptions(this.context);
    if (kept === null) tab.dispose();
    else this.add(tab, kept);
    return Promise.resolve();
  }

  private pin(panel: CurvesPanel, pinned: boolean): void {
    this.registry.pin(panel, pinned);
    this.contextAgain();
    const editor = window.activeTextEditor;
    if (!pinned && editor !== undefined) this.activeText(editor);
  }

  private contextAgain(): void {
    const active = this.registry.all.find((p) => p.tab.active);
    void commands.executeCommand('setContext', 'thermogloss.curvesKept', active?.pinned ?? false);
  }

  private activeText(editor: TextEditor | undefined): void {
    if (editor === undefined || !isGloss(editor.document)) return;
    this.registry.follow(editor.document.uri.toString());
    this.caretMoved(editor);
  }

  private caretMoved(editor: TextEditor): void {
    if (!isGloss(editor.document)) return;
    const { start, end } = editor.selection;
    const selection: TextRange = {
      start: { line: start.line, character: start.character },
      end: { line: end.line, character: end.character },
    };
    this.carets
      .moved(editor.document.uri.toString(), selection)
      .catch((error: unknown) => this.fault(`caret: ${String(error)}`));
  }

  private began(panel: CurvesPanel): void {
    this.carets.forget(panel);
    this.caretAgain(panel);
  }

  private caretAgain(panel: CurvesPanel): void {
    const shown = window.visibleTextEditors.filter((e) => panel.shows(e.document.uri.toString()));
    const editor = shown.find((e) => e === window.activeTextEditor) ?? shown[0];
    if (editor !== undefined) this.caretMoved(editor);
  }

  private async reveal(panel: CurvesPanel, place: RevealPlace): Promise<void> {
    let { uri, range } = place;
    if (place.statement !== null && (range === null || place.old)) {
      const now = await this.server.request<{ uri: string; range: TextRange }>(method.locate, {
        uri: place.uri,
        statement: place.statement,
      });
      if (now === null) {
        window.setStatusBarMessage(l10n.t('{0} is no longer in the text.', place.statement), 5000);
        return;
      }
      ({ uri, range } = now);
    }
    // The caret goes to the start of the place; the place itself is brought into view.
    const caret = range === null ? null : { start: range.start, end: range.start };
    if (caret !== null) this.carets.revealing(panel, uri, caret, place.statement);
    await showPlace(Uri.parse(uri), caret === null ? null : vscodeRange(caret), panel.tab.viewColumn);
  }

  private renamed(from: Uri, to: Uri): void {
    const old = from.toString();
    for (const panel of this.registry.all) {
      if (panel.uri === old) panel.renamed(to.toString());
      else if (panel.uri.startsWith(`${old}/`)) panel.renamed(to.toString() + panel.uri.slice(old.length));
    }
  }

  private serverState(state: ServerState): void {
    for (const { session } of this.registry.all) {
      if (state === 'lost') session.connection(false, l10n.t('The language server ended; another is started.'));
      if (state === 'failed' || state === 'stopped') {
        session.connection(false, l10n.t('The language server is not running.'));
      }
      if (state === 'running' || state === 'back') session.connection(true, '');
    }
  }

  private column(): ViewColumn {
    const open = this.registry.all.map((p) => p.tab.viewColumn).find((c) => c !== undefined);
    const active = window.tabGroups.activeTabGroup.viewColumn;
    return open !== undefined && open !== active ? open : columnFor(active, window.tabGroups.all.length);
  }
}

function activeGloss(): Uri | undefined {
  const document = window.activeTextEditor?.document;
  if (document !== undefined && isGloss(document)) return document.uri;
  const input = window.tabGroups.activeTabGroup.activeTab?.input;
  return input instanceof TabInputText && input.uri.path.endsWith('.gloss') ? input.uri : undefined;
}
