import {
  DidChangeConfigurationNotification,
  TextDocumentSyncKind,
  type Connection,
  type InitializeParams,
  type InitializeResult,
  type ServerCapabilities,
} from 'vscode-languageserver';
import { settingsFrom } from '../features/settings';
import { version } from '../presentation/version';
import { ClientState } from './clientState';
import { registerApproval } from './handlers/approval';
import { registerDiagnostics } from './handlers/diagnostics';
import { guardWith } from './handlers/guard';
import { navigationCapabilities, registerNavigation } from './handlers/navigation';
import { readingCapabilities, registerReading } from './handlers/reading';
import { registerText, textCapabilities } from './handlers/text';
import { registerViews } from './handlers/views';
import { registerWriting, writingCapabilities } from './handlers/writing';
import { LiveWorkspace } from './liveWorkspace';
import type { Outside } from './outside';

/** Serves one client over one connection until it is closed. */
export function serve(connection: Connection, outside: Outside): LiveWorkspace {
  const client = new ClientState();
  const fault = (what: string, error: unknown): void => {
    connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  };
  const guard = guardWith(fault);
  const workspace: LiveWorkspace = new LiveWorkspace(outside, {
    started: (uri) => client.started(uri),
    finished: (uri, results) => client.finished(uri, results),
    ended: (uri) => client.ended(uri),
    closed: (uri) => client.closed(uri),
    fault,
  });

  connection.onInitialize((params) => initialize(params, client, workspace));
  connection.onInitialized(() => {
    for (const call of client.onReady) call();
    if (client.configuration) {
      void connection.client.register(DidChangeConfigurationNotification.type, { section: 'thermogloss' });
    }
    if (client.folders) {
      connection.workspace.onDidChangeWorkspaceFolders(async () => {
        const folders = (await connection.workspace.getWorkspaceFolders()) ?? [];
        workspace.outside.setRoots(folders.map((f) => f.uri));
        workspace.refreshAll();
      });
    }
  });
  connection.onDidChangeConfiguration(({ settings }) => {
    client.pushed = (settings as { thermogloss?: unknown } | null)?.thermogloss ?? null;
    void Promise.all(workspace.texts.all().map(({ uri }) => fetchSettings(connection, client, workspace, uri))).then(
      () => {
        workspace.refreshAll();
        client.changed.forEach((call) => call());
      },
      (error: unknown) => fault('settings', error),
    );
  });

  connection.onDidOpenTextDocument(({ textDocument: t }) => {
    workspace.setSettings(t.uri, settingsFrom(client.pushed));
    workspace.open(t.uri, t.version, t.text);
    void fetchSettings(connection, client, workspace, t.uri).catch((error: unknown) => fault('settings', error));
  });
  connection.onDidChangeTextDocument(({ textDocument: t, contentChanges }) =>
    workspace.change(t.uri, t.version, contentChanges),
  );
  connection.onDidSaveTextDocument(({ textDocument: t }) => workspace.save(t.uri));
  connection.onDidCloseTextDocument(({ textDocument: t }) => workspace.close(t.uri));
  connection.onDidChangeWatchedFiles(({ changes }) => {
    workspace.filesChanged(changes.map((c) => c.uri));
    views.filesChanged().catch((error: unknown) => fault('views', error));
  });

  registerDiagnostics(connection, workspace, client, guard);
  registerWriting(connection, workspace, guard, client);
  registerReading(connection, workspace, guard, client);
  registerNavigation(connection, workspace, guard, client);
  registerText(connection, workspace, guard, client);
  registerApproval(connection, workspace, guard);
  const views = registerViews(connection, workspace, guard, client, fault);
  return workspace;
}

function initialize(params: InitializeParams, client: ClientState, workspace: LiveWorkspace): InitializeResult {
  client.learn(params);
  workspace.texts.encoding = client.encoding;
  const folders = params.workspaceFolders?.map((f) => f.uri) ?? (params.rootUri ? [params.rootUri] : []);
  workspace.outside.setRoots(folders);
  const capabilities: ServerCapabilities = {
    positionEncoding: client.encoding,
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
    ...(client.pull
      ? { diagnosticProvider: { identifier: 'thermogloss', interFileDependencies: true, workspaceDiagnostics: false } }
      : {}),
  };
  for (const more of [writingCapabilities, readingCapabilities, navigationCapabilities, textCapabilities]) {
    const { workspace: ofWorkspace, ...rest } = more;
    Object.assign(capabilities, rest);
    capabilities.workspace = { ...capabilities.workspace, ...ofWorkspace };
  }
  return { capabilities, serverInfo: { name: 'thermogloss', version } };
}

async function fetchSettings(
  connection: Connection,
  client: ClientState,
  workspace: LiveWorkspace,
  uri: string,
): Promise<void> {
  const sent: unknown = client.configuration
    ? await connection.workspace.getConfiguration({ scopeUri: uri, section: 'thermogloss' })
    : client.pushed;
  if (workspace.texts.get(uri) !== null) workspace.setSettings(uri, settingsFrom(sent));
}
