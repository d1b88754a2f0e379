import { env, l10n, window, type Uri } from 'vscode';
import { method } from '../../../server/src/protocol/messages';
import { isGloss } from '../server/documentSelector';
import type { LanguageServer } from '../server/languageServer';

export type TableFormat = 'tsv' | 'markdown' | 'csv' | 'text' | 'html';

/** Puts the results of a gloss on the clipboard. Pictures and cells with formats are copied from the curves view. */
export async function copyResults(server: LanguageServer, chosen?: Uri, form?: TableFormat): Promise<boolean> {
  const active = window.activeTextEditor?.document;
  const uri = chosen ?? (active !== undefined && isGloss(active) ? active.uri : undefined);
  if (uri === undefined) {
    void window.showInformationMessage(l10n.t('Open a gloss first: its results are copied.'));
    return false;
  }
  const format = form ?? (await chooseFormat());
  if (format === undefined) return false;
  const answer = await server.request<{ readonly text: string }>(method.table, { uri: uri.toString(), format });
  if (answer === null) {
    void window.showErrorMessage(l10n.t('There are no results to copy.'));
    return false;
  }
  await env.clipboard.writeText(answer.text);
  window.setStatusBarMessage(l10n.t('Results copied.'), 4000);
  return true;
}

async function chooseFormat(): Promise<TableFormat | undefined> {
  const items: { readonly label: string; readonly description: string; readonly format: TableFormat }[] = [
    { label: l10n.t('Cells'), description: l10n.t('tabs between them, for a spreadsheet'), format: 'tsv' },
    { label: l10n.t('Markdown'), description: l10n.t('for a report in text'), format: 'markdown' },
    { label: l10n.t('CSV'), description: l10n.t('commas between values, full precision'), format: 'csv' },
    { label: l10n.t('Text'), description: l10n.t('as the command line prints it'), format: 'text' },
    { label: l10n.t('HTML'), description: l10n.t('a table for a web page'), format: 'html' },
  ];
  return (await window.showQuickPick(items, { title: l10n.t('Copy the results as') }))?.format;
}
