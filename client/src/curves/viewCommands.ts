import { commands, Uri } from 'vscode';

/** What a view may ask for, beside its own messages. Arguments are addresses, nothing else. */
const allowed = new Set([
  'thermogloss.draft',
  'thermogloss.showLog',
  'thermogloss.restartServer',
  'thermogloss.evaluate',
  'thermogloss.copyResults',
  'thermogloss.showCurves',
]);

export function viewCommand(command: string, argument: string): void {
  if (!allowed.has(command)) return;
  void commands.executeCommand(command, ...(argument === '' ? [] : [Uri.parse(argument)]));
}
