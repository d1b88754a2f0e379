import type { PlacedFinding } from '../../engine/snapshot';
import { writeText } from '../../language/writing/writeText';
import { fileNameAt } from '../files/fileNames';
import { movedFile } from '../files/movedFile';
import type { Results, Workspace } from '../workspace';
import type { Change } from './edits';

export interface OfferedFix {
  readonly title: string;
  readonly safe: boolean;
  readonly changes: readonly Change[];
}

/** Where a file that is missing may have gone: the path to it, for a file of its name or with the content it had. */
export async function filesElsewhere(
  workspace: Workspace,
  { gloss }: Results,
  finding: PlacedFinding,
): Promise<readonly OfferedFix[]> {
  const named =
    finding.code === 'file-missing' && finding.file === 'gloss' ? fileNameAt(gloss.tree, finding.span.start) : null;
  const host = named === null ? null : workspace.hostOf(gloss.path);
  if (named === null || host === null) return [];
  const identity = workspace.identitySeen(host.resolve(gloss.path, named.file));
  const found = await movedFile(host, { gloss: gloss.path, file: named.file, identity });
  return found.map(({ file, same }) => ({
    title: `Write ${writeText(file)}${same ? ', which holds what was read before' : ''}`,
    // The same content gives the same numbers.
    safe: same,
    changes: [{ file: 'gloss', span: named.span, text: writeText(file) }],
  }));
}
