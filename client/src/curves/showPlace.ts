import { TabInputText, ViewColumn, window, workspace, type Range, type Uri } from 'vscode';
import { hasOwnText } from '../server/documentSelector';
import { columnFor } from './columns';

/**
 * Shows a text with the caret on a place: where it is open already, else beside the view.
 * @param beside column of the view that asked.
 */
export async function showPlace(uri: Uri, selection: Range | null, beside: number | undefined): Promise<void> {
  if (!hasOwnText(uri)) return;
  const document = await workspace.openTextDocument(uri);
  const viewColumn = columnOf(uri) ?? columnFor(beside, window.tabGroups.all.length);
  await window.showTextDocument(document, {
    viewColumn,
    preserveFocus: false,
    ...(selection === null ? {} : { selection }),
  });
}

/** Column in which a text is open, in sight or behind another tab. */
export function columnOf(uri: Uri): ViewColumn | undefined {
  const shown = window.visibleTextEditors.find((e) => e.document.uri.toString() === uri.toString());
  if (shown?.viewColumn !== undefined) return shown.viewColumn;
  const group = window.tabGroups.all.find((g) =>
    g.tabs.some((tab) => tab.input instanceof TabInputText && tab.input.uri.toString() === uri.toString()),
  );
  return group?.viewColumn;
}
