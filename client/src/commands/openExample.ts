import { l10n, Uri, window, workspace, type ExtensionContext } from 'vscode';

/** The invented limestone example: the gloss to open, its run, its method and its blanks. */
const files = [
  'vq217-1.gloss',
  'vq217-1.csv',
  'limestone.gloss',
  'blank-co2-1.csv',
  'blank-co2-1.gloss',
  'blank-co2-2.csv',
  'blank-co2-2.gloss',
] as const;

/** Copies the example into a folder of the person's choice and opens it there. What is there already is left alone. */
export async function openExample(context: ExtensionContext, chosen?: Uri): Promise<void> {
  const folder = chosen ?? (await chooseFolder());
  if (folder === undefined) return;
  const target = Uri.joinPath(folder, 'limestone-example');
  for (const name of files) {
    const to = Uri.joinPath(target, name);
    if (await exists(to)) continue;
    const from = Uri.joinPath(context.extensionUri, 'examples', 'limestone', name);
    await workspace.fs.writeFile(to, await workspace.fs.readFile(from));
  }
  await window.showTextDocument(await workspace.openTextDocument(Uri.joinPath(target, files[0])));
}

async function chooseFolder(): Promise<Uri | undefined> {
  const chosen = await window.showOpenDialog({
    title: l10n.t('Folder to put the example in'),
    canSelectFiles: false,
    canSelectFolders: true,
    openLabel: l10n.t('Put It Here'),
    ...(workspace.workspaceFolders?.[0] === undefined ? {} : { defaultUri: workspace.workspaceFolders[0].uri }),
  });
  return chosen?.[0];
}

async function exists(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}
