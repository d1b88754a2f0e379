import { FileType, l10n, Uri, window, workspace, WorkspaceEdit, type TextDocument } from 'vscode';
import { method, type ApproveAnswer } from '../../../server/src/protocol/messages';
import { vscodeRange } from '../curves/edgeWorld';
import { editable, type Writable } from '../curves/editable';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { localDay } from '../text/localDay';
import { toBytes } from '../text/utf8';
import { approveResults, type ApproveWorld } from './approve';

/** Said beforehand, by a key binding or another extension: it is not asked for. */
export interface Said {
  readonly by?: string;
  readonly because?: string;
}

/** Approves the results of a gloss, by default of the active one. */
export async function approveGloss(
  server: LanguageServer,
  writable: Writable,
  chosen?: Uri,
  said: Said = {},
): Promise<boolean> {
  const active = window.activeTextEditor?.document;
  const uri = chosen ?? (active !== undefined && isGloss(active) ? active.uri : undefined);
  if (uri === undefined) {
    void window.showInformationMessage(l10n.t('Open a gloss first: its results are approved.'));
    return false;
  }
  const document = await workspace.openTextDocument(uri);
  const outcome = await approveResults(uri.toString(), approveWorld(server, writable, document, said), l10n.t);
  if (outcome.done) window.setStatusBarMessage(l10n.t('Approved by {0}.', outcome.by), 4000);
  else if (outcome.reason !== null) void window.showErrorMessage(l10n.t('Not approved: {0}', outcome.reason));
  return outcome.done;
}

function approveWorld(server: LanguageServer, writable: Writable, document: TextDocument, said: Said): ApproveWorld {
  const uri = document.uri.toString();
  return {
    today: () => localDay(new Date()),
    proposal: async () => (await server.request<{ readonly name: string }>(method.approver, { uri }))?.name ?? '',
    name: async (value) =>
      said.by ??
      window.showInputBox({
        title: l10n.t('Approve the results'),
        prompt: l10n.t('Who approves? A record beside the gloss keeps the name. It is no electronic signature.'),
        value,
        ignoreFocusOut: true,
      }),
    reason: async (why) =>
      said.because ??
      window.showInputBox({ title: l10n.t('Approve with a reason'), prompt: why, ignoreFocusOut: true }),
    ask: (params) => server.request<ApproveAnswer>(method.approve, params),
    writable: () => editable(document.uri, writable),
    linked: async ({ record }) => isLink(Uri.parse(record.uri)),
    edit: async ({ version, edits }) => {
      if (document.isClosed || document.version !== version) return false;
      const edit = new WorkspaceEdit();
      for (const { range, text } of edits) edit.replace(document.uri, vscodeRange(range), text);
      return (await workspace.applyEdit(edit)) && document.version !== version;
    },
    record: async ({ record }) => {
      try {
        await workspace.fs.writeFile(Uri.parse(record.uri), toBytes(record.text));
        return true;
      } catch {
        return false;
      }
    },
    save: async () => document.save(),
  };
}

async function isLink(uri: Uri): Promise<boolean> {
  try {
    return ((await workspace.fs.stat(uri)).type & FileType.SymbolicLink) !== 0;
  } catch {
    // Nothing is there yet.
    return false;
  }
}
