import { commands, window, workspace, type Uri } from 'vscode';
import { columnOf } from './showPlace';
import { columnFor } from './columns';

/** Undoes or redoes in a text, then gives the focus back: the editor undoes only where the focus is. */
export async function undoIn(
  uri: Uri,
  redo: boolean,
  panelColumn: number | undefined,
  focusBack: () => void,
): Promise<void> {
  const document = await workspace.openTextDocument(uri);
  const viewColumn = columnOf(uri) ?? columnFor(panelColumn, window.tabGroups.all.length);
  await window.showTextDocument(document, { viewColumn, preserveFocus: false });
  await commands.executeCommand(redo ? 'redo' : 'undo');
  focusBack();
}
