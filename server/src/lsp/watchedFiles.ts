import { DidChangeWatchedFilesNotification, type Connection } from 'vscode-languageserver';
import type { ClientState } from './clientState';
import { dataFiles, glossFiles } from './fileKinds';

/** Has a client that can watch files tell of changes to glosses and to the data they rest on. */
export function registerWatchedFiles(connection: Connection, client: ClientState): void {
  client.onReady.push(() => {
    if (client.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
    const watchers = [glossFiles, dataFiles].map((globPattern) => ({ globPattern }));
    void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  });
}
