import type { CodeAction, Diagnostic } from 'vscode-languageserver-types';
import type { PlacedFinding } from '../../engine/snapshot';
import { statementAt } from '../statements';
import type { GlossDocument } from '../workspace';

/** The client asks for name and reason and writes what the server answers. */
export const approveCommand = 'thermogloss.approve';

const answered = new Set<string>(['approval-broken', 'approved-result-moved', 'approval-record-missing']);

/** What approving again answers. */
export function isAnswered(finding: PlacedFinding): boolean {
  return answered.has(finding.code);
}

/** On a line that approves: to approve what stands here now, with the findings that it answers. */
export function approveAgain(
  document: GlossDocument,
  offset: number,
  diagnostics: readonly Diagnostic[],
  kind: string,
): CodeAction[] {
  if (statementAt(document.tree, offset)?.statement?.kind !== 'approved') return [];
  const title = 'Approve these results again';
  return [
    {
      title,
      kind,
      ...(diagnostics.length === 0 ? {} : { diagnostics: [...diagnostics] }),
      command: { title, command: approveCommand, arguments: [document.uri] },
    },
  ];
}
