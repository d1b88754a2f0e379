import type { SymbolInformation } from 'vscode-languageserver-types';
import { titleOf } from './symbols';
import type { GlossText, Workspace } from './workspace';

/** More than anybody reads. */
const most = 500;

/**
 * Named statements and files of every gloss of the workspace whose name holds the letters of the query in their order.
 * The container is the gloss, with its specimen where it says one.
 */
export async function workspaceSymbols(workspace: Workspace, query: string): Promise<SymbolInformation[]> {
  const found: SymbolInformation[] = [];
  for (const text of await workspace.glosses()) {
    const containerName = container(text);
    for (const node of text.tree.statements) {
      const span = node.tokens.get('name') ?? node.tokens.get('file') ?? node.tokens.get('title');
      if (span === undefined) continue;
      const { name, kind } = titleOf(text.tree, node);
      if (!holdsInOrder(name, query) && !holdsInOrder(containerName, query)) continue;
      found.push({ name, kind, containerName, location: { uri: text.uri, range: text.positions.range(span) } });
      if (found.length === most) return found;
    }
  }
  return found;
}

function container({ tree, path }: GlossText): string {
  const name = path.slice(path.lastIndexOf('/') + 1);
  const run = tree.statements.find(({ statement }) => statement?.kind === 'run')?.statement;
  const sample = run?.kind === 'run' ? run.sample : null;
  return sample === null ? name : `${name}, ${sample}`;
}

/** Capitals count for nothing. */
function holdsInOrder(text: string, letters: string): boolean {
  const all = text.toLowerCase();
  let at = 0;
  for (const letter of letters.toLowerCase()) {
    at = all.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
