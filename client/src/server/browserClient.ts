import { LanguageClient } from 'vscode-languageclient/browser';
import type { NewClient } from './languageClient';

export { languageClient } from './languageClient';

export const newClient: NewClient = (id, name, connection, options) =>
  new LanguageClient(id, name, connection, options);
