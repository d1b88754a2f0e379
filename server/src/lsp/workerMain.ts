import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { fileMethod, type FileBytes } from '../protocol/files';
import { serve } from './server';
import { WorkerOutside } from './worker/workerOutside';

/** The server in a Worker of a browser: messages by the worker's own channel, files through the client. */
const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));
const files = {
  read: (uri: string): Promise<FileBytes> => connection.sendRequest<FileBytes>(fileMethod.read, { uri }),
  list: async (uri: string): Promise<readonly string[]> =>
    (await connection.sendRequest<{ names: readonly string[] }>(fileMethod.list, { uri })).names,
  glosses: async (): Promise<readonly string[]> =>
    (await connection.sendRequest<{ uris: readonly string[] }>(fileMethod.glosses, {})).uris,
};
serve(connection, new WorkerOutside(files));
connection.listen();
