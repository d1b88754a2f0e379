import { interpretationLines } from '../../presentation/interpretation';
import { usedFor } from './usedFor';
import { plain, rows, title, type Block } from '../prose';
import type { GlossDocument, Results, Workspace } from '../workspace';
import { isThere } from '../files/paths';

/** A file a statement names: where it lies and how it was read. */
export async function fileBlocks(
  workspace: Workspace,
  document: GlossDocument,
  results: Results | null,
  file: string,
): Promise<readonly Block[]> {
  const { host } = document.project;
  const path = host.resolve(document.path, file);
  const shown = host.display(path);
  if (!(await isThere(host, path)))
    return [title(shown), plain('There is no such file, or it lies outside the workspace.')];
  const gloss = file.endsWith('.gloss') ? await workspace.glossAt(path) : null;
  const run = results?.snapshot.run;
  const input = results?.snapshot.inputs.find((i) => i.display === shown);
  const read = run?.display === shown ? run : (input ?? null);
  const lines = read?.interpretation === null || read === null ? [] : interpretationLines(read.interpretation);
  return [
    title(shown),
    ...(gloss === null ? [] : [plain(usedFor(gloss.tree))]),
    rows(
      ['points', run?.display === shown ? String(run.points) : null],
      ['identity (SHA-256)', read?.identity ?? null],
      ...lines.map((line, i): [string, string] => [i === 0 ? 'read as' : 'and', line]),
    ),
  ];
}
