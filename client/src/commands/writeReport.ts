import { l10n, Uri, window, workspace } from 'vscode';
import { compareMethod, type ReportAnswer, type ReportParams } from '../../../server/src/protocol/compare';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';
import { toBytes } from '../text/utf8';
import { reportName } from './reportName';

/** What is not asked, for it is known. */
export interface ReportWishes {
  readonly format?: ReportParams['format'];
  readonly issued?: string | null;
  readonly target?: Uri;
}

/** Writes the report of a gloss as its text stands, to where a dialog says. Nothing is opened. True: it was written. */
export async function writeReport(server: LanguageServer, chosen?: Uri, wishes: ReportWishes = {}): Promise<boolean> {
  const active = window.activeTextEditor?.document;
  const gloss = chosen ?? (active !== undefined && isGloss(active) ? active.uri : undefined);
  if (gloss === undefined) {
    void window.showInformationMessage(l10n.t('Open a gloss first: its report is written.'));
    return false;
  }
  const format = wishes.format ?? (await chooseFormat());
  if (format === undefined) return false;
  const issued = wishes.issued === undefined ? await askDay() : wishes.issued;
  if (issued === undefined) return false;
  const params: ReportParams = { uri: gloss.toString(), format, issued };
  const answer = await server.request<ReportAnswer>(compareMethod.report, params);
  if (answer === null || !answer.ok) {
    const reason = answer?.message ?? l10n.t('The language server gave no answer.');
    void window.showErrorMessage(l10n.t('No report could be written: {0}', reason));
    return false;
  }
  const target = wishes.target ?? (await askTarget(gloss, format));
  if (target === undefined) return false;
  try {
    await workspace.fs.writeFile(target, toBytes(answer.text));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(l10n.t('No report could be written: {0}', reason));
    return false;
  }
  window.setStatusBarMessage(l10n.t('Report written: {0}', workspace.asRelativePath(target)), 6000);
  return true;
}

async function chooseFormat(): Promise<ReportParams['format'] | undefined> {
  const items: { readonly label: string; readonly description: string; readonly format: ReportParams['format'] }[] = [
    {
      label: l10n.t('HTML'),
      description: l10n.t('one page with its figures, for reading and printing'),
      format: 'html',
    },
    { label: l10n.t('Markdown'), description: l10n.t('text without figures'), format: 'markdown' },
  ];
  return (await window.showQuickPick(items, { title: l10n.t('Write the report as') }))?.format;
}

/** null: not issued; undefined: called off. */
async function askDay(): Promise<string | null | undefined> {
  const typed = await window.showInputBox({
    title: l10n.t('Day of issue'),
    prompt: l10n.t('As YYYY-MM-DD. Left empty, the report says that it is not issued.'),
    validateInput: (text) =>
      /^(?:\d{4}-\d{2}-\d{2})?$/.test(text) ? undefined : l10n.t('Write the day as YYYY-MM-DD.'),
  });
  return typed === '' ? null : typed;
}

function askTarget(gloss: Uri, format: ReportParams['format']): Thenable<Uri | undefined> {
  const folder = gloss.scheme === 'untitled' ? workspace.workspaceFolders?.[0]?.uri : Uri.joinPath(gloss, '..');
  const ending = format === 'html' ? 'html' : 'md';
  return window.showSaveDialog({
    title: l10n.t('Write Report'),
    filters: { [ending.toUpperCase()]: [ending] },
    ...(folder === undefined ? {} : { defaultUri: Uri.joinPath(folder, reportName(gloss.path, format)) }),
  });
}
