import { Disposable, FileType, RelativePattern, Uri, workspace } from 'vscode';
import type { LanguageServer } from '../server/languageServer';
import { fileChange } from './changes';
import { gitFolder, type Looked } from './gitFolder';

/**
 * Tells the server when another commit is checked out: what is said of HEAD and of who changed a gloss last is other then.
 * Git adds a line to `logs/HEAD` at each (gitrepository-layout(5)).
 */
export function watchCommits(server: LanguageServer): Disposable {
  let watchers: Disposable[] = [];
  let closed = false;
  let turn = 0;
  const stop = (): void => {
    for (const watcher of watchers) watcher.dispose();
    watchers = [];
  };
  const again = async (): Promise<void> => {
    const own = ++turn;
    const found = new Map<string, Uri>();
    for (const { uri } of workspace.workspaceFolders ?? []) {
      const folder = await gitFolder(uri.path.replace(/\/$/, ''), looking(uri)).catch(() => null);
      if (folder !== null) found.set(folder, Uri.joinPath(uri.with({ path: folder }), 'logs'));
    }
    if (closed || own !== turn) return;
    stop();
    for (const logs of found.values()) {
      const watcher = workspace.createFileSystemWatcher(new RelativePattern(logs, 'HEAD'));
      const told = (uri: Uri): void =>
        void server.notify('workspace/didChangeWatchedFiles', {
          changes: [{ uri: uri.toString(), type: fileChange.changed }],
        });
      watcher.onDidCreate(told);
      watcher.onDidChange(told);
      watchers.push(watcher);
    }
  };
  void again();
  return Disposable.from(
    // The folder may have become a repository meanwhile.
    workspace.onDidSaveTextDocument(() => void (watchers.length === 0 ? again() : undefined)),
    workspace.onDidChangeWorkspaceFolders(() => void again()),
    new Disposable(() => {
      closed = true;
      stop();
    }),
  );
}

function looking(uri: Uri): Looked {
  return {
    isFolder: async (path) => {
      try {
        return ((await workspace.fs.stat(uri.with({ path }))).type & FileType.Directory) !== 0;
      } catch {
        return null;
      }
    },
    text: async (path) => new TextDecoder().decode(await workspace.fs.readFile(uri.with({ path }))),
  };
}
