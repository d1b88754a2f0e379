import type { Connection } from 'vscode-languageserver';
import {
  compareMethod,
  type CompareAnswer,
  type CompareParams,
  type OldTextParams,
  type ReportAnswer,
  type ReportParams,
  type RevisionNames,
} from '../../protocol/compare';
import { compareResults, oldText } from '../compare/compareResults';
import { reportOf } from '../compare/reportOf';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';

/** Comparisons of results and reports, beyond the standard protocol. */
export function registerCompare(connection: Connection, workspace: LiveWorkspace, guard: Guard): void {
  connection.onRequest(
    compareMethod.revisions,
    guard<{ uri: string }, RevisionNames | null>('revisions', null, async ({ uri }) => {
      const path = workspace.pathOf(uri);
      const { outside } = workspace;
      return path === null ? null : ((await outside.revisions?.refs(outside.project(path).root)) ?? null);
    }),
  );
  connection.onRequest(
    compareMethod.compare,
    guard<CompareParams, CompareAnswer>(
      'compare',
      { ok: false, message: 'The comparison failed; the log says why.' },
      (params) => compareResults(workspace, params),
    ),
  );
  connection.onRequest(
    compareMethod.oldText,
    guard<OldTextParams, { text: string } | null>('text of a revision', null, async (params) => {
      const text = await oldText(workspace, params);
      return text === null ? null : { text };
    }),
  );
  connection.onRequest(
    compareMethod.report,
    guard<ReportParams, ReportAnswer>(
      'report',
      { ok: false, message: 'The report failed; the log says why.' },
      (params) => reportOf(workspace, params),
    ),
  );
}
