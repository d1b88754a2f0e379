import { l10n, Range, Uri, window, workspace, WorkspaceEdit, type TextDocument } from 'vscode';
import { method } from '../../../server/src/protocol/messages';
import type { EdgeEdit, EdgeRequest, TextRange } from '../../../server/src/protocol/view';
import type { LanguageServer } from '../server/languageServer';
import type { EdgeWorld } from './moveEdge';
import { showPlace } from './showPlace';
import { editable, type Writable } from './editable';

export function vscodeRange({ start, end }: TextRange): Range {
  return new Range(start.line, start.character, end.line, end.character);
}

/** The editor's side of moving an edge. */
export function edgeWorld(
  server: LanguageServer,
  writable: Writable,
  panelColumn: () => number | undefined,
): EdgeWorld {
  return {
    ask: (request: EdgeRequest) => server.request<EdgeEdit>(method.edgeEdit, request),
    open: async (uri) => {
      const document = await open(uri);
      if (document === null) return null;
      return { version: document.version, editable: await editable(document.uri, writable) };
    },
    confirm: async (touches) => {
      const change = l10n.t('Change the Method');
      const message =
        touches === 1
          ? l10n.t('This edge belongs to the method. One gloss uses it.')
          : l10n.t('This edge belongs to the method. {0} glosses use it, and all of them change.', touches);
      return (await window.showWarningMessage(message, { modal: true }, change)) === change;
    },
    apply: async ({ uri, version, edits, label }) => {
      const document = await open(uri);
      if (document === null || document.version !== version) return false;
      if (edits.every(({ range, text }) => document.getText(vscodeRange(range)) === text)) return true;
      const edit = new WorkspaceEdit();
      for (const { range, text } of edits) {
        edit.replace(document.uri, vscodeRange(range), text, { label, needsConfirmation: false });
      }
      // An editor that is read-only for another reason takes the edit and does nothing.
      return (await workspace.applyEdit(edit)) && document.version !== version;
    },
    caret: (uri, range) => showPlace(Uri.parse(uri), vscodeRange(range), panelColumn()),
  };
}

async function open(uri: string): Promise<TextDocument | null> {
  try {
    return await workspace.openTextDocument(Uri.parse(uri, true));
  } catch {
    return null;
  }
}
