import { TextDocumentEdit, type TextEdit, type WorkspaceEdit } from 'vscode-languageserver';

/** An edit without versions, for clients that know no others. */
export function plainEdit(edit: WorkspaceEdit): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const change of edit.documentChanges ?? []) {
    if (!TextDocumentEdit.is(change)) continue;
    const plain = change.edits.filter((e): e is TextEdit => 'newText' in e);
    changes[change.textDocument.uri] = [...(changes[change.textDocument.uri] ?? []), ...plain];
  }
  return { changes };
}
