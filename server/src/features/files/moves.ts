import type { Host } from '../../base/host';
import type { TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { writeText } from '../../language/writing/writeText';
import type { GlossText, Workspace } from '../workspace';
import { fileNamesIn, type FileName } from './fileNames';
import { absolutePath, folderOf, inFolder, relativePath } from './paths';

/** A file or folder about to be moved or renamed. */
export interface Move {
  readonly oldUri: string;
  readonly newUri: string;
}

/**
 * Keeps the paths in the glosses of the workspace right when files or folders move: those that point to what moves, and
 * those in a gloss that moves itself. One edit for all; the texts are named as they stand before the move.
 */
export async function pathsAfterMoves(workspace: Workspace, moves: readonly Move[]): Promise<WorkspaceEdit | null> {
  const known = moves.flatMap(({ oldUri, newUri }) => {
    const [from, to] = [workspace.pathOf(oldUri), workspace.pathOf(newUri)];
    return from === null || to === null ? [] : [{ from: from.replace(/(.)\/$/, '$1'), to: to.replace(/(.)\/$/, '$1') }];
  });
  if (known.length === 0) return null;
  const moved = (path: string): string => {
    const by = known.find(({ from }) => path === from || path.startsWith(inFolder(from, '')));
    return by === undefined ? path : by.to + path.slice(by.from.length);
  };
  const documentChanges: TextDocumentEdit[] = [];
  for (const text of await workspace.glosses()) {
    const host = workspace.hostOf(text.path);
    const edits = fileNamesIn(text.tree).flatMap((named) => {
      const file = host === null ? null : fileAfter(host, text, named, moved);
      return file === null ? [] : [{ range: text.positions.range(named.span), newText: writeText(file) }];
    });
    if (edits.length > 0) documentChanges.push({ textDocument: { uri: text.uri, version: text.version }, edits });
  }
  return documentChanges.length === 0 ? null : { documentChanges };
}

/** How a gloss names the file afterwards; null: as before. */
function fileAfter(host: Host, text: GlossText, named: FileName, moved: (path: string) => string): string | null {
  const path = moved(text.path);
  const target = moved(host.resolve(text.path, named.file));
  if (host.resolve(path, named.file) === target) return null;
  if (/^(?:\/|[A-Za-z]:)/.test(named.file)) return absolutePath(target);
  const way = relativePath(folderOf(path), target);
  return named.file.startsWith('./') && !way.startsWith('.') ? `./${way}` : way;
}
