import { commands, l10n, window, type Disposable } from 'vscode';
import type { LanguageServer } from '../server/languageServer';

/** Says once a session that the server was lost and is back, and each time that it is not started again. */
export function tellOfLosses(server: LanguageServer, showLog: () => void): Disposable {
  let told = false;
  return server.onState(async (state) => {
    const log = l10n.t('Show Log');
    if (state === 'back' && !told) {
      told = true;
      const message = l10n.t('The language server ended and was started again.');
      if ((await window.showWarningMessage(message, log)) === log) showLog();
    }
    if (state === 'failed') {
      const restart = l10n.t('Restart Server');
      const message = l10n.t('The language server is not running. What is shown may be old.');
      const choice = await window.showErrorMessage(message, restart, log);
      if (choice === log) showLog();
      if (choice === restart) await commands.executeCommand('thermogloss.restartServer');
    }
  });
}
