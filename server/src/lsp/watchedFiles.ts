import { DidChangeWatchedFilesNotification, type Connection } from 'vscode-languageserver';
import type { ClientState } from './clientState';
import { dataFiles, glossFiles, records } from './fileKinds';

/** Has a client that can watch files tell of changes to glosses, to the data they rest on and to records of approvals. */
export function registerWatchedFiles(connection: Connection, client: ClientState): void {
  client.onReady.push(() => {
    if (client.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
    const watchers = [glossFiles, dataFiles, records].map((globPattern) => ({ globPattern }));
    void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  });
}
