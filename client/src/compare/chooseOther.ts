import { l10n, Uri, window, workspace } from 'vscode';
import { compareMethod, type ComparedWith, type RevisionNames } from '../../../server/src/protocol/compare';
import type { LanguageServer } from '../server/languageServer';
import { firstChoices, nameChoices } from './choices';

/** Asks what the results of a gloss are to be compared with; undefined: nothing was chosen. */
export async function chooseOther(server: LanguageServer, gloss: Uri): Promise<ComparedWith | undefined> {
  const names = await server.request<RevisionNames>(compareMethod.revisions, { uri: gloss.toString() });
  const first = await window.showQuickPick(
    firstChoices(names, (message, ...args) => l10n.t(message, ...args)),
    {
      title: l10n.t('Compare the results with'),
      ...(names === null ? { placeHolder: l10n.t('There is no git revision here to compare with.') } : {}),
    },
  );
  if (first === undefined) return undefined;
  const { choice } = first;
  if (choice.next === 'done') return choice.with;
  if (choice.next === 'file') return chooseFile(gloss);
  const listed = nameChoices(choice.next, names!);
  const title = choice.next === 'tag' ? l10n.t('Compare the results with the tag') : l10n.t('Choose the branch');
  return (await window.showQuickPick(listed, { title }))?.choice;
}

/** Files of the workspace that may hold results, or any other one. */
async function chooseFile(gloss: Uri): Promise<ComparedWith | undefined> {
  const found = await workspace.findFiles('**/*.{gloss,json}', '**/{node_modules,.vscode}/**', mostListed);
  const items = found
    .filter((uri) => uri.toString() !== gloss.toString())
    .map((uri) => ({ label: workspace.asRelativePath(uri), uri: uri as Uri | null }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
  const other = { label: l10n.t('Another file …'), uri: null };
  const title = l10n.t('Compare the results with the file');
  const chosen = await window.showQuickPick([...items, other], { title });
  if (chosen === undefined) return undefined;
  const uri = chosen.uri ?? (await chooseAnywhere(title));
  return uri === undefined ? undefined : { kind: 'file', uri: uri.toString() };
}

async function chooseAnywhere(title: string): Promise<Uri | undefined> {
  const filters = { [l10n.t('Saved results and glosses')]: ['json', 'gloss'] };
  return (await window.showOpenDialog({ title, filters }))?.[0];
}

/** More files than anybody would scroll through are not listed. */
const mostListed = 1000;
