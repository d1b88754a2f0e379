import { env, l10n, Uri, ViewColumn, window, workspace, type ExtensionContext, type WebviewPanel } from 'vscode';
import type { ExportTheme, FromView, KeptView, ToView } from '../../../server/src/protocol/messages';
import type { Abscissa, EdgeEdit, EdgeRequest } from '../../../server/src/protocol/view';
import type { LanguageServer } from '../server/languageServer';
import { lastPart } from '../text/fileName';
import { editable, type Writable } from './editable';
import { edgeWorld } from './edgeWorld';
import { moveEdge } from './moveEdge';
import { curvesPage, wordsPage } from './page';
import { saveExport } from './saveExport';
import { CurvesSession, type RevealPlace, type SessionWorld } from './session';
import { columnOf } from './showPlace';
import { undoIn } from './undo';
import { viewWords } from './viewWords';

/** What all curves views share. */
export interface CurvesShared {
  readonly context: ExtensionContext;
  readonly server: LanguageServer;
  readonly writable: Writable;
  reveal(panel: CurvesPanel, place: RevealPlace): Promise<void>;
  pin(panel: CurvesPanel, pinned: boolean): void;
  command(command: string, argument: string): void;
  fault(message: string): void;
  began(panel: CurvesPanel): void;
  posted(panel: CurvesPanel, message: ToView): void;
}

export const viewType = 'thermogloss.curves';

export function preferences(): { readonly exportTheme: ExportTheme; readonly abscissa: Abscissa } {
  const settings = workspace.getConfiguration('thermogloss');
  return {
    exportTheme: settings.get<ExportTheme>('export.theme', 'light'),
    abscissa: settings.get<Abscissa>('curves.abscissa', 'temperature'),
  };
}

/** One curves view in its tab: page, title, and the session that talks to it. */
export class CurvesPanel {
  readonly session: CurvesSession;
  /** Text that the last moved edge was written to. */
  private edited: string | null = null;
  private gone = false;
  private closed = false;

  constructor(
    readonly id: string,
    readonly tab: WebviewPanel,
    kept: KeptView,
    private readonly shared: CurvesShared,
  ) {
    this.session = new CurvesSession(id, kept, this.world());
    tab.webview.onDidReceiveMessage((message: FromView) => {
      this.session.take(message).catch((error: unknown) => shared.fault(String(error)));
    });
    tab.onDidDispose(() => (this.closed = true));
    tab.onDidChangeViewState(() => {
      if (!tab.visible) this.session.hidden();
    });
    const icon = (theme: string): Uri => Uri.joinPath(shared.context.extensionUri, 'client', 'media', `${theme}.svg`);
    tab.iconPath = { light: icon('curves-light'), dark: icon('curves-dark') };
    void this.load();
  }

  get uri(): string {
    return this.session.uri;
  }

  shows(uri: string): boolean {
    return this.session.shows(uri);
  }

  get pinned(): boolean {
    return this.session.pinned;
  }

  get listening(): boolean {
    return this.tab.visible && this.session.ready && followsCaret();
  }

  caret(statement: string | null): void {
    this.session.caret(statement);
  }

  setPinned(pinned: boolean): void {
    this.session.setPinned(pinned);
    this.titleAgain();
  }

  show(uri: string): void {
    this.session.show(uri);
    void this.load();
  }

  renamed(uri: string): void {
    this.session.renamed(uri);
    void this.load();
  }

  /** The page for the gloss, or words where it is not there: it is looked for again when files come and go. */
  async load(): Promise<void> {
    const { uri } = this;
    // The text is opened without an editor: the server evaluates open texts, and the view needs no tab beside it.
    const there = await isThere(Uri.parse(uri));
    if (uri !== this.uri || this.closed) return;
    this.titleAgain();
    if (there && !this.gone && this.tab.webview.html !== '') return this.session.lookAgain();
    if (!there && this.gone) return;
    this.gone = !there;
    if (!there) this.session.hidden();
    this.tab.webview.html = there ? this.curves() : this.absence();
  }

  private titleAgain(): void {
    const name = lastPart(Uri.parse(this.uri).path);
    this.tab.title = this.pinned ? l10n.t('Curves of {0} (kept)', name) : l10n.t('Curves of {0}', name);
  }

  private curves(): string {
    const { webview } = this.tab;
    const file = (name: string): string =>
      webview.asWebviewUri(Uri.joinPath(this.shared.context.extensionUri, 'dist', name)).toString();
    return curvesPage({
      cspSource: webview.cspSource,
      nonce: nonce(),
      script: file('webview.js'),
      style: file('webview.css'),
      language: env.language,
      title: l10n.t('Curves'),
      words: viewWords(l10n.bundle),
    });
  }

  private absence(): string {
    const { webview } = this.tab;
    const style = webview
      .asWebviewUri(Uri.joinPath(this.shared.context.extensionUri, 'dist', 'webview.css'))
      .toString();
    const name = lastPart(Uri.parse(this.uri).path);
    return wordsPage(
      { cspSource: webview.cspSource, style, language: env.language, title: l10n.t('Curves') },
      l10n.t('{0} is not there', name),
      [
        l10n.t('The gloss whose curves were shown here was deleted, moved or renamed outside the editor.'),
        l10n.t('When the file is back, its curves are back too. Otherwise this tab can be closed.'),
      ],
    );
  }

  private world(): SessionWorld {
    const { shared } = this;
    const { server } = shared;
    const world = edgeWorld(server, shared.writable, () => this.tab.viewColumn);
    return {
      post: (message) => {
        // Answers to its last questions may come when the tab is closed.
        if (this.closed) return;
        shared.posted(this, message);
        void this.tab.webview.postMessage(message);
      },
      request: (name, params) => server.request(name, params),
      notify: (name, params) => void server.notify(name, params),
      editable: (uri) => editable(Uri.parse(uri), shared.writable),
      preferences,
      moveEdge: async (request: EdgeRequest): Promise<EdgeEdit> => {
        const answer = await moveEdge(request, world, (message, ...args) => l10n.t(message, ...args));
        if (answer.ok) this.edited = answer.uri;
        return answer;
      },
      reveal: (place) => shared.reveal(this, place),
      pin: (pinned) => shared.pin(this, pinned),
      undo: (redo) =>
        undoIn(Uri.parse(this.edited ?? this.uri), redo, this.tab.viewColumn, () =>
          this.tab.reveal(this.tab.viewColumn ?? ViewColumn.Beside, false),
        ),
      command: (command, argument) => shared.command(command, argument),
      save: (name, base64) => saveExport(Uri.parse(this.uri), name, base64),
      copyText: async (text) => {
        await env.clipboard.writeText(text);
        return '';
      },
      fault: (message) => shared.fault(message),
      began: () => shared.began(this),
    };
  }
}

export function followsCaret(): boolean {
  return workspace.getConfiguration('thermogloss').get<boolean>('curves.followCaret', true);
}

export function newTab(context: ExtensionContext, column: ViewColumn): WebviewPanel {
  return window.createWebviewPanel(
    viewType,
    l10n.t('Curves'),
    { viewColumn: column, preserveFocus: true },
    tabOptions(context),
  );
}

export function tabOptions(context: ExtensionContext): {
  readonly enableScripts: true;
  readonly localResourceRoots: readonly Uri[];
} {
  return { enableScripts: true, localResourceRoots: [Uri.joinPath(context.extensionUri, 'dist')] };
}

async function isThere(uri: Uri): Promise<boolean> {
  try {
    // The editor goes on holding the text of a deleted file for a while; it counts as long as a tab shows it.
    if (uri.scheme !== 'untitled' && columnOf(uri) === undefined) await workspace.fs.stat(uri);
    await workspace.openTextDocument(uri);
    return true;
  } catch {
    return false;
  }
}

function nonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes)).replace(/[+/=]/g, '');
}
