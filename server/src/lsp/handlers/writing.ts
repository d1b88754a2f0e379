import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import { actionKinds, codeActions } from '../../features/actions/actions';
import { completion, resolveCompletion } from '../../features/completion/completion';
import { signatureHelp } from '../../features/signature/signature';
import type { GlossDocument } from '../../features/workspace';
import { abilitiesOf } from '../abilities';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';

export const writingCapabilities: ServerCapabilities = {
  completionProvider: {
    triggerCharacters: [' ', '.', '"', '/', '('],
    resolveProvider: true,
    completionItem: { labelDetailsSupport: true },
  },
  codeActionProvider: { codeActionKinds: [...actionKinds] },
  signatureHelpProvider: { triggerCharacters: [' ', '(', ','], retriggerCharacters: [')'] },
};

/** What helps to write: completions, forms, repairs. */
export function registerWriting(
  connection: Connection,
  workspace: LiveWorkspace,
  guard: Guard,
  client: ClientState,
): void {
  const abilities = () => abilitiesOf(client.capabilities);
  /** The answer for an open document; `empty` for what is not open or no file. */
  const on = <P extends { readonly textDocument: { readonly uri: string } }, R>(
    what: string,
    empty: R,
    answer: (document: GlossDocument, params: P) => Promise<R> | R,
  ) =>
    guard<P, R>(what, empty, async (params) => {
      const document = await workspace.document(params.textDocument.uri);
      return document === null ? empty : answer(document, params);
    });

  connection.onCompletion(
    on('completion', { isIncomplete: false, items: [] }, (document, { position }) =>
      completion(workspace, document, position, abilities()),
    ),
  );
  connection.onCompletionResolve((item, token) =>
    guard('completion', item, () => resolveCompletion(workspace, item, abilities()))(item, token),
  );
  connection.onSignatureHelp(
    on('signature', null, (document, { position }) => signatureHelp(document, position, abilities())),
  );
  connection.onCodeAction(
    on('actions', [], (document, { range, context }) => {
      // A client that knows commands only has none of ours to run.
      const literals = client.capabilities.textDocument?.codeAction?.codeActionLiteralSupport !== undefined;
      return literals ? codeActions(workspace, document, range, context, abilities()) : [];
    }),
  );
}
