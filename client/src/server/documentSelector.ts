/** Identifier of the language in the editor. */
export const languageId = 'gloss';

/**
 * Where a gloss is a document of its own. Not among them: revisions of version control (`git:` and its like), shown beside
 * the working text in a diff editor, which get no hints and no findings.
 */
export const schemes = ['file', 'untitled', 'vscode-remote', 'vscode-vfs', 'vscode-test-web', 'memfs'] as const;

export const documentSelector = schemes.map((scheme) => ({ scheme, language: languageId }));

export function isGloss(document: { readonly languageId: string; readonly uri: { readonly scheme: string } }): boolean {
  return document.languageId === languageId && hasOwnText(document.uri);
}

export function hasOwnText(uri: { readonly scheme: string }): boolean {
  return (schemes as readonly string[]).includes(uri.scheme);
}
