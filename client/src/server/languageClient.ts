import type { LogOutputChannel } from 'vscode';
import {
  CloseAction,
  ErrorAction,
  RevealOutputChannelOn,
  type BaseLanguageClient,
  type LanguageClientOptions,
  type Middleware,
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
  return { client, connection };
}
