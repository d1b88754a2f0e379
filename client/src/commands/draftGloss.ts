import { l10n, Uri, window, workspace, WorkspaceEdit, type TextDocument } from 'vscode';
import { method, type DraftAnswer } from '../../../server/src/protocol/messages';
import { languageId } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { isDataFile } from '../text/dataFiles';
import { toBytes } from '../text/utf8';
import { chooseRun } from './chooseRun';
import { freeName } from './freeName';

export interface DraftTools {
  readonly server: LanguageServer;
  readonly note: (line: string) => void;
  readonly showLog: () => void;
}

/** Drafts a gloss for a run file and opens it: beside the run where there is none yet, else unsaved under a free name. */
export async function draftGloss(tools: DraftTools, chosen: Uri | undefined): Promise<TextDocument | null> {
  const active = window.activeTextEditor?.document.uri;
  const run = chosen ?? (active !== undefined && isDataFile(active.path) ? active : await chooseRun());
  if (run === undefined) return null;
  const answer = await tools.server.request<DraftAnswer>(method.draft, { path: run.toString(), method: null });
  if (answer === null || !answer.ok) {
    const message = answer?.message ?? l10n.t('The language server gave no answer.');
    void window.showErrorMessage(l10n.t('No gloss could be drafted: {0}', message));
    return null;
  }
  const document = await open(Uri.parse(answer.uri), answer.text);
  await window.showTextDocument(document);
  tellNotes(answer.notes, tools);
  return document;
}

async function open(beside: Uri, text: string): Promise<TextDocument> {
  if (await createFile(beside, text)) return workspace.openTextDocument(beside);
  if (beside.scheme !== 'file') return workspace.openTextDocument({ language: languageId, content: text });
  // Unsaved, but with a place beside the run, so that the names of files in it hold.
  const free = await freeName(beside.path, (path) => exists(beside.with({ path })));
  const document = await workspace.openTextDocument(beside.with({ scheme: 'untitled', path: free }));
  const edit = new WorkspaceEdit();
  edit.insert(document.uri, document.positionAt(0), text);
  await workspace.applyEdit(edit);
  return document;
}

/** False where there is such a file, or none can be written. The editor checks and creates in one step. */
async function createFile(uri: Uri, text: string): Promise<boolean> {
  if (await exists(uri)) return false;
  const edit = new WorkspaceEdit();
  edit.createFile(uri, { overwrite: false, ignoreIfExists: false, contents: toBytes(text) });
  try {
    return await workspace.applyEdit(edit);
  } catch {
    return false;
  }
}

/** On disk, or as an unsaved text of that name. */
async function exists(uri: Uri): Promise<boolean> {
  if (workspace.textDocuments.some((d) => d.uri.path === uri.path)) return true;
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

/** What the draft decided for its reader is said once, and kept in the log. */
function tellNotes(notes: readonly string[], { note, showLog }: DraftTools): void {
  if (notes.length === 0) return;
  notes.forEach(note);
  const open = l10n.t('Show Log');
  void window.showInformationMessage(notes.join(' '), open).then((choice) => {
    if (choice === open) showLog();
  });
}
