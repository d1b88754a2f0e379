import { stat } from 'node:fs/promises';
import { Uri, type ExtensionContext } from 'vscode';
import { activateWith } from './activate';
import type { Observation } from './observation';
import type { LanguageServer } from './server/languageServer';
import { startNodeProcess } from './server/nodeProcess';

let server: LanguageServer | null = null;

/** Entry in a desktop editor and in a remote extension host. */
export function activate(context: ExtensionContext): Observation | undefined {
  const module = Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const active = activateWith(context, {
    startProcess: (events) => startNodeProcess(module, events),
    load: () => import('./server/nodeClient'),
    writable,
  });
  server = active.server;
  return active.observed;
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}

/** A file that nobody may write is read-only here, although the editor would ask only on saving. */
async function writable(uri: Uri): Promise<boolean> {
  if (uri.scheme !== 'file') return true;
  try {
    return ((await stat(uri.fsPath)).mode & 0o222) !== 0;
  } catch {
    return true;
  }
}
