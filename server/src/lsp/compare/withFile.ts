import type { Host } from '../../base/host';
import { comparedOf, type ComparedGloss } from '../../presentation/diff/compared';
import type { DiffModel, GlossDiff } from '../../presentation/diff/model';
import { savedResults } from '../../presentation/diff/saved';
import { defaultTolerance } from '../../presentation/diff/tolerance';
import { compareNumbers } from '../../presentation/diff/compareNumbers';
import type { LiveWorkspace } from '../liveWorkspace';
import { evaluatedNow } from './evaluatedNow';

/** Glosses as they stand, compared with saved results or with another gloss; no cause is looked for. A text: why not. */
export async function compareWithFile(
  workspace: LiveWorkspace,
  paths: readonly string[],
  file: string,
): Promise<DiffModel | string> {
  const path = workspace.pathOf(file);
  if (path === null) return 'The file to compare with cannot be read.';
  const { host } = workspace.outside.project(path);
  const isSaved = path.endsWith('.json');
  const older = isSaved ? await saved(host, path) : await evaluated(workspace, file);
  if (typeof older === 'string') return older;
  const glosses: GlossDiff[] = [];
  for (const at of paths) {
    const now = await evaluated(workspace, workspace.uriOf(at));
    if (typeof now === 'string') return now;
    // Several glosses are each compared with another one; saved results are of the gloss that they name.
    const from =
      older.length === 1 && (!isSaved || paths.length === 1) ? older[0] : older.find((o) => o.gloss === now[0].gloss);
    const nothing: ComparedGloss = { ...now[0], results: [], requirements: [], failure: null };
    const diff = compareNumbers(from ?? nothing, now[0], defaultTolerance);
    glosses.push(from === undefined ? { ...diff, status: 'added' } : diff);
  }
  return { from: host.display(path), to: 'working copy', glosses };
}

async function evaluated(workspace: LiveWorkspace, uri: string): Promise<readonly ComparedGloss[] | string> {
  const ground = await evaluatedNow(workspace, uri);
  return ground === null ? 'The gloss cannot be read.' : [comparedOf(ground.snapshot)];
}

async function saved(host: Host, path: string): Promise<readonly ComparedGloss[] | string> {
  const file = await host.read(path);
  if (!file.ok) return `${file.message}.`;
  if (file.size > mostBytes) return `${host.display(path)} is too large for a file of saved results.`;
  const pieces: Uint8Array[] = [];
  for await (const piece of file.chunks()) pieces.push(piece.slice());
  const whole = new Uint8Array(pieces.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  const results = savedResults(host.decode(whole));
  return 'problem' in results ? `${host.display(path)} is no file of saved results: ${results.problem}.` : results;
}

/** Results of thousands of glosses take less. */
const mostBytes = 1 << 27;
