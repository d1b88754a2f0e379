import { l10n, Uri, window, workspace } from 'vscode';
import { fromBase64 } from '../text/base64';
import { fileName } from '../text/fileName';

/** Asks where to and writes a picture or table of the view there. Empty: done; else why not. */
export async function saveExport(gloss: Uri, name: string, base64: string): Promise<string> {
  const own = fileName(name);
  const extension = /\.([A-Za-z0-9]+)$/.exec(own)?.[1];
  const folder = gloss.scheme === 'untitled' ? workspace.workspaceFolders?.[0]?.uri : Uri.joinPath(gloss, '..');
  const target = await window.showSaveDialog({
    ...(folder === undefined ? {} : { defaultUri: Uri.joinPath(folder, own) }),
    ...(extension === undefined ? {} : { filters: { [extension.toUpperCase()]: [extension] } }),
  });
  if (target === undefined) return l10n.t('Not saved.');
  try {
    await workspace.fs.writeFile(target, fromBase64(base64));
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
