import { PassThrough } from 'node:stream';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type ClientCapabilities,
  type InitializeResult,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node';
import { createConnection } from 'vscode-languageserver/node';
import type { Outside } from '../../../server/src/lsp/outside';
import type { LiveWorkspace } from '../../../server/src/lsp/liveWorkspace';
import { serve } from '../../../server/src/lsp/server';

/** A client and the server in one process, over the protocol's own bytes. */
export interface TestClient {
  readonly connection: ProtocolConnection;
  readonly workspace: LiveWorkspace;
  readonly initialized: InitializeResult;
  /** Messages the server logged: a fault is one. */
  readonly logged: string[];
  open(name: string, text: string, version?: number): string;
  change(uri: string, version: number, text: string): void;
  close(): void;
}

export async function startClient(
  outside: Outside,
  capabilities: ClientCapabilities = {},
  folders: readonly string[] = ['file:///lab'],
): Promise<TestClient> {
  const up = new PassThrough();
  const down = new PassThrough();
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  const workspace = serve(server, outside);
  server.listen();
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const logged: string[] = [];
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => void logged.push(message));
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('workspace/diagnostic/refresh', () => null);
  connection.listen();
  const initialized: InitializeResult = await connection.sendRequest('initialize', {
    processId: null,
    rootUri: folders[0] ?? null,
    capabilities,
    workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
  });
  await connection.sendNotification('initialized', {});
  const notify = (method: string, params: object): void => void connection.sendNotification(method, params);
  return {
    connection,
    workspace,
    initialized,
    logged,
    open(name, text, version = 1) {
      const uri = name.includes(':') ? name : `file:///lab/${name}`;
      notify('textDocument/didOpen', { textDocument: { uri, languageId: 'gloss', version, text } });
      return uri;
    },
    change(uri, version, text) {
      notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ text }] });
    },
    close() {
      connection.dispose();
      server.dispose();
    },
  };
}
