import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import { inlayHints, resolveHint } from '../../features/hints/hints';
import { hover } from '../../features/hover/hover';
import { codeLenses } from '../../features/lenses';
import { legend } from '../../features/tokens/legend';
import { semanticTokens } from '../../features/tokens/tokens';
import type { GlossDocument } from '../../features/workspace';
import { abilitiesOf } from '../abilities';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import type { Guard } from './guard';
import { coalesced } from './refresh';
import { TokenAnswers } from './tokenAnswers';

export const readingCapabilities: ServerCapabilities = {
  hoverProvider: true,
  inlayHintProvider: { resolveProvider: true },
  codeLensProvider: { resolveProvider: false },
  semanticTokensProvider: { legend, full: { delta: true }, range: true },
};

/** What is read beside and behind the text: numbers, words, hints, lenses, colours. */
export function registerReading(
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

  connection.onHover(on('hover', null, (document, { position }) => hover(workspace, document, position, abilities())));
  connection.languages.inlayHint.on(
    on('hints', [], async (document, { range }) => {
      const hints = inlayHints(workspace, document, range);
      const able = abilities();
      return able.resolvesHints ? hints : Promise.all(hints.map((hint) => resolveHint(workspace, hint, able)));
    }),
  );
  connection.languages.inlayHint.resolve((hint, token) =>
    guard('hint', hint, () => resolveHint(workspace, hint, abilities()))(hint, token),
  );
  connection.onCodeLens(on('lenses', [], (document) => codeLenses(workspace, document)));

  const answers = new TokenAnswers();
  connection.languages.semanticTokens.on(
    on('tokens', { data: [] }, (document) => answers.full(document.uri, semanticTokens(document))),
  );
  connection.languages.semanticTokens.onDelta(
    on('tokens', { data: [] }, (document, { previousResultId }) =>
      answers.delta(document.uri, semanticTokens(document), previousResultId),
    ),
  );
  connection.languages.semanticTokens.onRange(
    on('tokens', { data: [] }, (document, { range }) => ({ data: semanticTokens(document, range) })),
  );
  client.onClosed.push((uri) => answers.forget(uri));

  const fault = (error: unknown): void => connection.console.error(`refresh: ${String(error)}`);
  const hints = coalesced(() => connection.languages.inlayHint.refresh(), fault);
  const lenses = coalesced(() => connection.sendRequest('workspace/codeLens/refresh'), fault);
  const refresh = (): void => {
    if (client.refreshHints) hints();
    if (client.refreshLenses) lenses();
  };
  // Numbers come after the text they belong to: whoever shows them is told.
  client.onFinished.push(refresh);
  client.changed.push(refresh);
}
