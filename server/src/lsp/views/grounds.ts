import type { RunCurves } from '../../engine/curves/runCurves';
import type { Abscissa } from '../../protocol/view';
import type { GlossText } from '../../features/workspace';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Ground } from './picture';

/** Evaluates a gloss for a view: the open text's own results, or those of its file. null: it cannot be read. */
export async function groundOf(
  workspace: LiveWorkspace,
  uri: string,
  abscissa: Abscissa,
  over?: { readonly key: string; readonly run: RunCurves },
): Promise<Ground | null> {
  const path = workspace.pathOf(uri);
  if (path === null) return null;
  const { engine, approvals } = workspace.outside.project(path);
  if (workspace.texts.get(uri) !== null) {
    const results = (await workspace.currentResults(uri)) ?? workspace.results(uri);
    if (results === null) return null;
    const { snapshot, gloss, method } = results;
    await engine.prepareCurves(snapshot, abscissa);
    return { snapshot, curves: engine.curvesOf(snapshot, over), gloss, method };
  }
  const gloss = await workspace.glossAt(path);
  if (gloss === null) return null;
  // As an open text has it: with what is found about its approvals.
  const snapshot = await approvals.checked(await engine.evaluate(path, gloss.text));
  await engine.prepareCurves(snapshot, abscissa);
  const method = snapshot.method === null ? null : await workspace.glossAt(snapshot.method.path);
  return { snapshot, curves: engine.curvesOf(snapshot, over), gloss, method };
}

/** Path of the method a run gloss imports; null: none. */
export function methodPathOf(workspace: LiveWorkspace, gloss: GlossText): string | null {
  for (const { statement } of gloss.tree.statements) {
    if (statement?.kind === 'use method')
      return workspace.outside.project(gloss.path).host.resolve(gloss.path, statement.file);
  }
  return null;
}

/** Run glosses of the workspace that import the method at a path. */
export async function usersOf(workspace: LiveWorkspace, methodPath: string): Promise<readonly GlossText[]> {
  const glosses = await workspace.glosses();
  return glosses.filter((g) => g.tree.role === 'run' && methodPathOf(workspace, g) === methodPath);
}

/** `vq217-1` of `/lab/vq217-1.gloss`. */
export function nameOfPath(path: string): string {
  return (path.split('/').pop() ?? path).replace(/\.gloss$/, '');
}
