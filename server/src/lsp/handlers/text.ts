import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import { folding } from '../../features/folding';
import { formatting, newlineFormatting, rangeFormatting } from '../../features/formatting';
import { selectionRanges } from '../../features/selection';
import type { GlossDocument } from '../../features/workspace';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';

export const textCapabilities: ServerCapabilities = {
  foldingRangeProvider: true,
  selectionRangeProvider: true,
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
};

/** The text as lines: folds, stretches, layout. */
export function registerText(
  connection: Connection,
  workspace: LiveWorkspace,
  guard: Guard,
  client: ClientState,
): void {
  const on = <P extends { readonly textDocument: { readonly uri: string } }, R>(
    what: string,
    empty: R,
    answer: (document: GlossDocument, params: P) => R,
  ) =>
    guard<P, R>(what, empty, async (params) => {
      const document = await workspace.document(params.textDocument.uri);
      return document === null ? empty : answer(document, params);
    });

  connection.onFoldingRanges(
    on('folding', [], (document) =>
      folding(document, client.capabilities.textDocument?.foldingRange?.rangeLimit ?? Infinity),
    ),
  );
  connection.onSelectionRanges(on('selection', [], (document, { positions }) => selectionRanges(document, positions)));
  connection.onDocumentFormatting(on('format', [], (document) => formatting(document)));
  connection.onDocumentRangeFormatting(on('format', [], (document, { range }) => rangeFormatting(document, range)));
  connection.onDocumentOnTypeFormatting(
    on('format', [], (document, { position }) => newlineFormatting(document, position)),
  );
}
