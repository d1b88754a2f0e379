import { FileSystemError, FileType, l10n, Uri, workspace } from 'vscode';
import { fileMethod, type FileBytes } from '../../../server/src/protocol/files';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { toBase64 } from '../text/base64';
import { glossPattern } from '../text/dataFiles';
import { reachable } from './reachable';

/** Reads files for a server that has no disk: in a browser, and where a workspace is not on this machine. */
export function serveFiles(server: LanguageServer): void {
  server.onRequest<{ readonly uri: string }, FileBytes>(fileMethod.read, ({ uri }) => read(uri));
  server.onRequest<{ readonly uri: string }, { readonly names: readonly string[] }>(fileMethod.list, ({ uri }) =>
    list(uri),
  );
  server.onRequest<object, { readonly uris: readonly string[] }>(fileMethod.glosses, async () => {
    const found = await workspace.findFiles(glossPattern, '**/node_modules/**');
    return { uris: found.map((uri) => uri.toString()).sort() };
  });
}

async function read(address: string): Promise<FileBytes> {
  const uri = Uri.parse(address);
  if (!reachable(uri.toString(), folders())) {
    return { ok: false, reason: 'outside', message: l10n.t('The file is outside the folders that are open.') };
  }
  try {
    return { ok: true, base64: toBase64(await workspace.fs.readFile(uri)) };
  } catch (error) {
    const missing = error instanceof FileSystemError && error.code === 'FileNotFound';
    const message = error instanceof Error ? error.message : String(error);
    return { ok: false, reason: missing ? 'missing' : 'unreadable', message };
  }
}

async function list(address: string): Promise<{ readonly names: readonly string[] }> {
  const uri = Uri.parse(address);
  if (!reachable(uri.toString(), folders())) return { names: [] };
  try {
    const entries = await workspace.fs.readDirectory(uri);
    return { names: entries.map(([name, type]) => (type === FileType.Directory ? `${name}/` : name)).sort() };
  } catch {
    return { names: [] };
  }
}

function folders(): readonly string[] {
  const roots = (workspace.workspaceFolders ?? []).map((f) => f.uri);
  const beside = workspace.textDocuments.filter(isGloss).map((d) => Uri.joinPath(d.uri, '..'));
  return [...roots, ...beside].map((uri) => uri.toString().replace(/\/$/, ''));
}
