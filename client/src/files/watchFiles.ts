import { Disposable, RelativePattern, Uri, workspace, type FileSystemWatcher, type GlobPattern } from 'vscode';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { dataPattern, glossPattern, isDataFile, isRecord, recordPattern } from '../text/dataFiles';
import { FileChanges, fileChange, type FileChange } from './changes';
import { OutsideFolders } from './outsideFolders';

/**
 * Tells the server of glosses, data files and records of approvals that come, change and go: below the workspace folders, and beside open glosses
 * outside of them.
 * @param glossMoved told of glosses that came or went.
 */
export function watchFiles(server: LanguageServer, glossMoved: (uri: Uri) => void): Disposable {
  const changes = new FileChanges((all) => void server.notify('workspace/didChangeWatchedFiles', { changes: all }));
  const seen = (uri: Uri, type: FileChange): void => {
    const gloss = uri.path.endsWith('.gloss');
    if (!gloss && !isDataFile(uri.path) && !isRecord(uri.path)) return;
    changes.add(uri.toString(), type);
    if (gloss && type !== fileChange.changed) glossMoved(uri);
  };
  const watch = (pattern: GlobPattern): FileSystemWatcher => {
    const watcher = workspace.createFileSystemWatcher(pattern);
    watcher.onDidCreate((uri) => seen(uri, fileChange.created));
    watcher.onDidChange((uri) => seen(uri, fileChange.changed));
    watcher.onDidDelete((uri) => seen(uri, fileChange.deleted));
    return watcher;
  };
  const outside = new OutsideFolders((folder) => watch(new RelativePattern(Uri.parse(folder), '*')));
  const again = (): void => {
    const glosses = workspace.textDocuments.filter((d) => isGloss(d) && d.uri.scheme !== 'untitled');
    const alone = glosses.filter((d) => workspace.getWorkspaceFolder(d.uri) === undefined);
    outside.set(new Set(alone.map((d) => Uri.joinPath(d.uri, '..').toString())));
  };
  again();
  return Disposable.from(
    watch(glossPattern),
    watch(dataPattern),
    watch(recordPattern),
    outside,
    workspace.onDidOpenTextDocument(again),
    workspace.onDidCloseTextDocument(again),
    workspace.onDidChangeWorkspaceFolders(again),
  );
}
