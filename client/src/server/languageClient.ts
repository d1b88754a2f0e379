import type { LogOutputChannel } from 'vscode';
import {
  CloseAction,
  ErrorAction,
  RevealOutputChannelOn,
  type BaseLanguageClient,
  type LanguageClientOptions,
  type Middleware,
  type StaticFeature,
} from 'vscode-languageclient';
import { documentSelector } from './documentSelector';
import type { RpcMessage } from './rpc';
import { localConnection, type LocalConnection } from './transports';

export type NewClient = (
  id: string,
  name: string,
  connection: () => Promise<LocalConnection['transports']>,
  options: LanguageClientOptions,
) => BaseLanguageClient;

export interface Connected {
  readonly client: BaseLanguageClient;
  readonly connection: LocalConnection;
}

/** A language client at one end of a connection whose other end is `take`. */
export function languageClient(
  newClient: NewClient,
  log: LogOutputChannel,
  ours: Middleware,
  take: (message: RpcMessage) => void,
): Connected {
  const connection = localConnection(take);
  const options: LanguageClientOptions = {
    documentSelector,
    outputChannel: log,
    // Faults go to the log; the status item says what a person needs to know.
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    initializationFailedHandler: () => false,
    // The supervisor replaces lost servers: a connection that closes is over.
    errorHandler: {
      error: () => ({ action: ErrorAction.Continue, handled: true }),
      closed: () => ({ action: CloseAction.DoNotRestart, handled: true }),
    },
    middleware: ours,
    diagnosticPullOptions: { onChange: true, onSave: true },
    markdown: { isTrusted: false, supportHtml: false },
  };
  const client = newClient('thermogloss', 'Thermogloss', () => Promise.resolve(connection.transports), options);
  client.registerFeature(ownWatching);
  client.registerFeature(ownCommands);
  return { client, connection };
}

/**
 * Files are watched here (`files/watchFiles`), also those outside the workspace and without the library's delay: the server
 * need not ask for it, and would hear of everything twice.
 */
const ownWatching: StaticFeature = {
  fillClientCapabilities: ({ workspace }) => {
    if (workspace !== undefined) delete workspace.didChangeWatchedFiles;
  },
  initialize: () => undefined,
  getState: () => ({ kind: 'static' }),
  clear: () => undefined,
};

/** Tells the server of commands that its answers may name; other clients have none of them. */
const ownCommands: StaticFeature = {
  fillClientCapabilities: (capabilities) => {
    const others = capabilities.experimental as object | undefined;
    capabilities.experimental = { ...others, thermogloss: { commands: ['thermogloss.approve'] } };
  },
  initialize: () => undefined,
  getState: () => ({ kind: 'static' }),
  clear: () => undefined,
};
