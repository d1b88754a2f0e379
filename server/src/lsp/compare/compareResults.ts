import type { CompareAnswer, CompareParams, OldTextParams } from '../../protocol/compare';
import type { LiveWorkspace } from '../liveWorkspace';
import { comparisonOf } from './comparisonOf';
import { subjectsOf } from './subjects';
import { compareWithFile } from './withFile';

/** The results of a gloss as its text stands, compared with what was asked for. */
export async function compareResults(workspace: LiveWorkspace, params: CompareParams): Promise<CompareAnswer> {
  const no = (message: string): CompareAnswer => ({ ok: false, message });
  const subjects = await subjectsOf(workspace, params.uri);
  const own = workspace.pathOf(params.uri);
  if (subjects === null || own === null) return no('The gloss cannot be read.');
  if (subjects.paths.length === 0)
    return no('No gloss of the workspace names this method: there are no results to compare.');
  const { outside } = workspace;
  const { host, root } = outside.project(own);
  const uriOf = (path: string): string => (path === own ? params.uri : workspace.uriOf(path));
  if (params.with.kind === 'file') {
    const model = await compareWithFile(workspace, subjects.paths, params.with.uri);
    if (typeof model === 'string') return no(model);
    const pathOf = (shown: string): string =>
      subjects.paths.find((p) => host.display(p) === shown) ?? subjects.paths[0];
    return { ok: true, comparison: comparisonOf(model, { with: params.with, commit: null, pathOf, uriOf }) };
  }
  if (outside.revisions === null) return no('Revisions are not compared here, for there is no git program to ask.');
  const paths = workspace.texts.all().flatMap((t) => workspace.pathOf(t.uri) ?? []);
  const open = { at: (path: string) => workspace.openText(path), paths };
  const made = await outside.revisions.compare(root, subjects, params.with.name, open);
  if (typeof made === 'string') return no(made);
  const pathOf = (shown: string): string => `${made.top}/${shown}`;
  const asSpelled = (path: string): string => uriOf(made.ofEditor(path));
  // What is opened from the comparison later is of the files that were compared.
  const by = { kind: 'revision', name: made.lasting } as const;
  const names = { with: by, commit: made.commit, pathOf, uriOf: asSpelled };
  return { ok: true, comparison: comparisonOf(made.model, names) };
}

/** A text of the old side; null: there is none. */
export async function oldText(workspace: LiveWorkspace, params: OldTextParams): Promise<string | null> {
  const path = workspace.pathOf(params.uri);
  if (path === null) return null;
  if (params.with.kind === 'file') return (await workspace.glossAt(path))?.text ?? null;
  const { outside } = workspace;
  return (await outside.revisions?.text(outside.project(path).root, path, params.with.name)) ?? null;
}
