import type { ClientCapabilities, InitializeParams } from 'vscode-languageserver';
import type { PositionEncoding } from '../features/positions';
import type { Results } from '../features/workspace';

/** What the client can do, and who wants to hear of finished evaluations. */
export class ClientState {
  /** As the client told them; features read from here what they may answer with. */
  capabilities: ClientCapabilities = {};
  encoding: PositionEncoding = 'utf-16';
  /** It asks for diagnostics itself. */
  pull = false;
  configuration = false;
  folders = false;
  refreshDiagnostics = false;
  refreshHints = false;
  refreshLenses = false;
  refreshTokens = false;
  progress = false;
  /** Settings that came with a notification, for clients that cannot be asked. */
  pushed: unknown = null;
  /** Once the client takes requests. */
  readonly onReady: (() => void)[] = [];
  readonly onStarted: ((uri: string) => void)[] = [];
  readonly onFinished: ((uri: string, results: Results) => void)[] = [];
  /** An evaluation that was started is over, finished or not. */
  readonly onEnded: ((uri: string) => void)[] = [];
  readonly onClosed: ((uri: string) => void)[] = [];
  /** After a change of settings. */
  readonly changed: (() => void)[] = [];

  learn(params: InitializeParams): void {
    this.capabilities = params.capabilities;
    const { general, textDocument, workspace, window } = params.capabilities;
    // UTF-16 is what offsets are in: taken where the client knows it, which every client must.
    const encodings = general?.positionEncodings;
    this.encoding = encodings?.includes('utf-8') === true && !encodings.includes('utf-16') ? 'utf-8' : 'utf-16';
    this.pull = textDocument?.diagnostic !== undefined;
    this.configuration = workspace?.configuration === true;
    this.folders = workspace?.workspaceFolders === true;
    this.refreshDiagnostics = workspace?.diagnostics?.refreshSupport === true;
    this.refreshHints = workspace?.inlayHint?.refreshSupport === true;
    this.refreshLenses = workspace?.codeLens?.refreshSupport === true;
    this.refreshTokens = workspace?.semanticTokens?.refreshSupport === true;
    this.progress = window?.workDoneProgress === true;
  }

  started(uri: string): void {
    for (const call of this.onStarted) call(uri);
  }

  finished(uri: string, results: Results): void {
    for (const call of this.onFinished) call(uri, results);
  }

  ended(uri: string): void {
    for (const call of this.onEnded) call(uri);
  }

  closed(uri: string): void {
    for (const call of this.onClosed) call(uri);
  }
}
