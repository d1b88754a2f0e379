import { FilePermission, Uri, workspace } from 'vscode';
import { hasOwnText } from '../server/documentSelector';

/** Whether a file's own permissions let anybody write it; true where they are not known. */
export type Writable = (uri: Uri) => Promise<boolean>;

/** Whether a text may be edited: no revision of version control, no read-only file or file system. */
export async function editable(uri: Uri, writable: Writable): Promise<boolean> {
  if (!hasOwnText(uri)) return false;
  if (uri.scheme === 'untitled') return true;
  if (workspace.fs.isWritableFileSystem(uri.scheme) === false) return false;
  try {
    const { permissions } = await workspace.fs.stat(uri);
    if (permissions !== undefined && (permissions & FilePermission.Readonly) !== 0) return false;
  } catch {
    // Not on disk (any more): the open text can still be written.
    return true;
  }
  return writable(uri);
}
