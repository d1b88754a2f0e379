import type { Diagnostic } from 'vscode-languageserver-types';
import type { PlacedFinding } from '../engine/snapshot';
import type { Severity } from '../findings/finding';
import { firstSpan } from './statements';
import type { Results, Workspace } from './workspace';

const severities: Readonly<Record<Severity, 1 | 2 | 3>> = { error: 1, warning: 2, note: 3 };
const order: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** What stays beside a diagnostic of ours, for the code actions. */
export interface DiagnosticData {
  /** Index of the finding in its snapshot. */
  readonly finding: number;
  readonly version: number;
}

/**
 * Findings of one gloss as diagnostics, errors first, at most so many as the settings allow. Findings in the method are
 * reported with the method's own text; here they stand on the `method` statement when they come from this run's data.
 * Allowed findings are not reported.
 */
export function diagnostics(workspace: Workspace, results: Results): Diagnostic[] {
  const { snapshot } = results;
  const most = workspace.settings(results.gloss.uri).mostFindings;
  return snapshot.findings
    .map((finding, index) => ({ finding, index }))
    .filter(({ finding }) => finding.allowed === null)
    .sort((a, b) => order[a.finding.severity] - order[b.finding.severity] || a.index - b.index)
    .slice(0, most)
    .map(({ finding, index }) => diagnosticOf(results, finding, index, workspace));
}

function diagnosticOf(results: Results, finding: PlacedFinding, index: number, workspace: Workspace): Diagnostic {
  const { gloss, method } = results;
  const here = finding.file === 'gloss' || method === null;
  const span = here ? finding.span : firstSpan(gloss.tree, 'use method');
  const related = finding.related.map((r) => ({ file: r.file, span: r.span, message: r.message }));
  if (!here) related.unshift({ file: 'method', span: finding.span, message: 'stated in the method' });
  const page = workspace.pageOf(finding.code);
  const data: DiagnosticData = { finding: index, version: results.version };
  return {
    range: gloss.positions.range(span),
    severity: severities[finding.severity],
    code: finding.code,
    ...(page === null ? {} : { codeDescription: { href: page } }),
    source: 'thermogloss',
    message: finding.message,
    ...(finding.code === 'allow-unused' ? { tags: [1 as const] } : {}),
    relatedInformation: related.map((r) => {
      const text = r.file === 'method' && method !== null ? method : gloss;
      return { location: { uri: text.uri, range: text.positions.range(r.span) }, message: r.message };
    }),
    data,
  };
}
