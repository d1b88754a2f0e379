import type { CodeLens } from 'vscode-languageserver-types';
import { plural } from '../presentation/plural';
import { isCurrent, type GlossDocument, type Workspace } from './workspace';

/** The client opens the curves of a gloss by this name. */
export const showCurvesCommand = 'thermogloss.showCurves';

/** Above the first statement: the way to the curves, and what there is. Off unless the settings ask for it. */
export function codeLenses(workspace: Workspace, document: GlossDocument): CodeLens[] {
  const first = document.tree.statements[0];
  if (!workspace.settings(document.uri).lenses || first === undefined) return [];
  const range = document.positions.range(first.tokens.get('head') ?? first.span);
  const curves: CodeLens = {
    range,
    command: { title: 'Show curves', command: showCurvesCommand, arguments: [document.uri] },
  };
  const results = workspace.results(document.uri);
  if (results === null || document.tree.role !== 'run') return [curves];
  const { snapshot } = results;
  const findings = snapshot.findings.filter((f) => f.allowed === null);
  const words = [
    plural(snapshot.results.length, 'result') ?? 'no results',
    plural(findings.length, 'finding') ?? 'no findings',
  ];
  const title = `${words.join(', ')}${isCurrent(document, results) ? '' : ' (stale)'}`;
  // A title alone: an empty command is one that does nothing.
  return [curves, { range, command: { title, command: '' } }];
}
