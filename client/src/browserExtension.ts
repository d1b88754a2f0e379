import { Uri, workspace, type ExtensionContext } from 'vscode';
import { activateWith } from './activate';
import type { Observation } from './observation';
import type { LanguageServer } from './server/languageServer';
import { startWorkerProcess, type WorkerLike } from './server/workerProcess';

let server: LanguageServer | null = null;

/** Entry in a browser: the server is a worker, and files are read through the editor. */
export async function activate(context: ExtensionContext): Promise<Observation | undefined> {
  const script = await workerScript(Uri.joinPath(context.extensionUri, 'dist', 'serverWorker.js'));
  const active = activateWith(context, {
    startProcess: (events) => startWorkerProcess(() => new Worker(script) as WorkerLike, events),
    load: () => import('./server/browserClient'),
    writable: () => Promise.resolve(true),
  });
  server = active.server;
  return active.observed;
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}

/** An extension host in a browser starts no worker from the address of a remote extension: it is given the text itself. */
async function workerScript(module: Uri): Promise<string> {
  const bytes = await workspace.fs.readFile(module);
  return URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'text/javascript' }));
}
