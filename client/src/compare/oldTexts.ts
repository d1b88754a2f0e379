import { l10n, Uri, workspace, type Disposable } from 'vscode';
import { compareMethod, type OldTextParams } from '../../../server/src/protocol/compare';
import type { LanguageServer } from '../server/languageServer';
import { oldParams, oldQuery, oldScheme } from './oldAddress';

/** Gives the editor the texts of the old side. They cannot be edited. */
export function provideOldTexts(server: LanguageServer): Disposable {
  return workspace.registerTextDocumentContentProvider(oldScheme, {
    async provideTextDocumentContent(uri) {
      const params = oldParams(uri.query);
      const found =
        params === null ? null : await server.request<{ readonly text: string }>(compareMethod.oldText, params);
      if (found === null) throw new Error(l10n.t('This text is not there any more.'));
      return found.text;
    },
  });
}

export function oldUri(params: OldTextParams, comparison: number): Uri {
  const { path } = Uri.parse(params.uri);
  return Uri.from({ scheme: oldScheme, path, query: oldQuery(params, comparison) });
}
