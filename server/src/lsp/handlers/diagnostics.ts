import { DocumentDiagnosticReportKind, type Connection, type DocumentDiagnosticReport } from 'vscode-languageserver';
import { diagnostics } from '../../features/diagnostics';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';

const nothing: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };

/** Findings to the client: pulled where it can ask, pushed with their version where it cannot. */
export function registerDiagnostics(
  connection: Connection,
  workspace: LiveWorkspace,
  client: ClientState,
  guard: Guard,
): void {
  connection.languages.diagnostics.on(
    guard('diagnostics', nothing, async ({ textDocument, previousResultId }) => {
      const results = (await workspace.currentResults(textDocument.uri)) ?? workspace.results(textDocument.uri);
      if (results === null) return nothing;
      const resultId = `${results.revision}`;
      if (previousResultId === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
      return { kind: DocumentDiagnosticReportKind.Full, resultId, items: diagnostics(workspace, results) };
    }),
  );
  client.onFinished.push((uri, results) => {
    if (client.pull) {
      // Asked for again only where something else than the typing brought the results (a file, a method, a setting).
      if (client.refreshDiagnostics) connection.languages.diagnostics.refresh();
      return;
    }
    void connection.sendDiagnostics({ uri, version: results.version, diagnostics: diagnostics(workspace, results) });
  });
  client.onClosed.push((uri) => {
    if (!client.pull) void connection.sendDiagnostics({ uri, diagnostics: [] });
  });
}
