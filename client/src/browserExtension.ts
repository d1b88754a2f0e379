import { Uri, type ExtensionContext } from 'vscode';
import { activateWith } from './activate';
import type { Observation } from './observation';
import type { LanguageServer } from './server/languageServer';
import { startWorkerProcess, type WorkerLike } from './server/workerProcess';

let server: LanguageServer | null = null;

/** Entry in a browser: the server is a worker, and files are read through the editor. */
export function activate(context: ExtensionContext): Observation | undefined {
  const module = Uri.joinPath(context.extensionUri, 'dist', 'serverWorker.js').toString(true);
  const active = activateWith(context, {
    startProcess: (events) => startWorkerProcess(() => new Worker(module) as WorkerLike, events),
    load: () => import('./server/browserClient'),
    writable: () => Promise.resolve(true),
  });
  server = active.server;
  return active.observed;
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
