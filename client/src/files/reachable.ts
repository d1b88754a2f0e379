/**
 * Whether a file may be read for the server: below a workspace folder, or beside an open gloss. Nothing else leaves the
 * editor for it.
 * @param uri address of a file or folder, as `Uri.toString()` writes it.
 * @param folders addresses of workspace folders and of folders of open glosses, without `/` at their end.
 */
export function reachable(uri: string, folders: readonly string[]): boolean {
  // Encoded dots are dots to a file system.
  if (/(?:^|\/)(?:\.|%2e){2}(?:\/|$)/i.test(uri)) return false;
  return folders.some((folder) => uri === folder || uri.startsWith(`${folder}/`));
}
