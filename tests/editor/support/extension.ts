import {
  commands,
  ConfigurationTarget,
  extensions,
  languages,
  Uri,
  window,
  workspace,
  type TextDocument,
  type TextEditor,
} from 'vscode';
import type { InlayHint } from 'vscode';
import { Range } from 'vscode';
import type { Observation } from '../../../client/src/observation';

/** What the extension shows to tests. It is started where it has not been yet. */
export async function observed(): Promise<Observation> {
  const extension = extensions.getExtension<Observation>('thermogloss.thermogloss');
  if (extension === undefined) throw new Error('The extension is not in this editor.');
  // In a browser texts are saved by themselves, and a test would not know what is on disk.
  await workspace.getConfiguration('files').update('autoSave', 'off', ConfigurationTarget.Global);
  return extension.activate();
}

export function folder(): Uri {
  const [first] = workspace.workspaceFolders ?? [];
  if (first === undefined) throw new Error('No folder is open.');
  return first.uri;
}

export function inFolder(...names: readonly string[]): Uri {
  return Uri.joinPath(folder(), ...names);
}

export async function openGloss(name: string): Promise<TextEditor> {
  return window.showTextDocument(await workspace.openTextDocument(inFolder(name)), { preview: false });
}

/** Looks again and again until something is there. Fails with what it was that was waited for. */
export async function until<T>(
  what: string,
  look: () => T | undefined | null | false | Promise<T | undefined | null | false>,
): Promise<T> {
  for (let tries = 0; tries < 400; tries++) {
    const found = await look();
    if (found !== undefined && found !== null && found !== false) return found;
    await pause();
  }
  throw new Error(`Waited in vain: ${what}`);
}

/** Lets the editor work for a moment. */
export function pause(milliseconds = 50): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}

export async function hints(document: TextDocument): Promise<readonly InlayHint[]> {
  const whole = new Range(0, 0, document.lineCount, 0);
  return (
    (await commands.executeCommand<InlayHint[] | undefined>('vscode.executeInlayHintProvider', document.uri, whole)) ??
    []
  );
}

export function codes(uri: Uri): string[] {
  return languages.getDiagnostics(uri).map(({ code }) => String(typeof code === 'object' ? code.value : code));
}

export async function read(uri: Uri): Promise<string> {
  return new TextDecoder().decode(await workspace.fs.readFile(uri));
}

export async function write(uri: Uri, text: string): Promise<void> {
  await workspace.fs.writeFile(uri, new TextEncoder().encode(text));
}

export async function closeAll(): Promise<void> {
  await commands.executeCommand('workbench.action.closeAllEditors');
}

/** Puts a document back to what is on disk, so that nothing is asked on closing. */
export async function revert(editor: TextEditor): Promise<void> {
  await window.showTextDocument(editor.document, editor.viewColumn);
  await commands.executeCommand('workbench.action.files.revert');
}
