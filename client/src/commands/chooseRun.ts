import { l10n, window, workspace, type QuickPickItem, type Uri } from 'vscode';
import { dataEndings, dataPattern } from '../text/dataFiles';

/** More files than anybody would scroll through are not listed. */
const mostListed = 1000;

interface RunItem extends QuickPickItem {
  readonly uri: Uri | null;
}

/** A run file of the workspace, or of anywhere; undefined: none chosen. */
export async function chooseRun(): Promise<Uri | undefined> {
  const found = await workspace.findFiles(dataPattern, '**/node_modules/**', mostListed);
  if (found.length === 0) return chooseAnywhere();
  const items: RunItem[] = found
    .map((uri) => ({ label: workspace.asRelativePath(uri), uri }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
  const other = { label: l10n.t('Another file …'), uri: null };
  const title = l10n.t('Run to draft a gloss for');
  const chosen = await window.showQuickPick<RunItem>([...items, other], { title, matchOnDescription: true });
  if (chosen === undefined) return undefined;
  return chosen.uri ?? chooseAnywhere();
}

async function chooseAnywhere(): Promise<Uri | undefined> {
  const chosen = await window.showOpenDialog({
    title: l10n.t('Run to draft a gloss for'),
    filters: { [l10n.t('Exported runs')]: [...dataEndings], [l10n.t('All files')]: ['*'] },
  });
  return chosen?.[0];
}
