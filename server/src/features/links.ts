import type { DocumentLink } from 'vscode-languageserver-types';
import { fileNamesIn } from './files/fileNames';
import { isThere } from './files/paths';
import type { GlossDocument, Workspace } from './workspace';

/** The files a text names, to be opened; what is not there has no target and says so. */
export function documentLinks(workspace: Workspace, document: GlossDocument): Promise<DocumentLink[]> {
  const { host } = document.project;
  return Promise.all(
    fileNamesIn(document.tree).map(async ({ file, inner }) => {
      const path = host.resolve(document.path, file);
      const range = document.positions.range(inner);
      const shown = host.display(path);
      if (await isThere(host, path)) return { range, target: workspace.uriOf(path), tooltip: shown };
      return { range, tooltip: `Missing: there is no file ${shown}` };
    }),
  );
}
