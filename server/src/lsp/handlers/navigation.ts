import {
  FileOperationPatternKind,
  LSPErrorCodes,
  ResponseError,
  type Connection,
  type LocationLink,
  type ServerCapabilities,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { definition } from '../../features/definition';
import { pathsAfterMoves } from '../../features/files/moves';
import { linkedNames } from '../../features/linkedNames';
import { documentLinks } from '../../features/links';
import { highlights, references } from '../../features/references';
import { prepareRename, rename, type Refusal } from '../../features/rename';
import { documentSymbols, flatSymbols } from '../../features/symbols';
import type { GlossDocument } from '../../features/workspace';
import { workspaceSymbols } from '../../features/workspaceSymbols';
import type { ClientState } from '../clientState';
import type { LiveWorkspace } from '../liveWorkspace';
import { dataFiles, glossFiles } from '../fileKinds';
import { plainEdit } from '../plainEdit';
import { registerProgress } from '../progress';
import { registerWatchedFiles } from '../watchedFiles';
import type { Guard } from './guard';

export const navigationCapabilities: ServerCapabilities = {
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: { label: 'Thermogloss' },
  workspaceSymbolProvider: true,
  documentLinkProvider: {},
  linkedEditingRangeProvider: true,
  workspace: {
    fileOperations: {
      willRename: {
        filters: [
          ...[glossFiles, dataFiles].map((glob) => ({
            pattern: { glob, matches: FileOperationPatternKind.file, options: { ignoreCase: true } },
          })),
          { pattern: { glob: '**/*', matches: FileOperationPatternKind.folder } },
        ],
      },
    },
  },
};

/** Where names and files stand, and what happens to them when one is changed. */
export function registerNavigation(
  connection: Connection,
  workspace: LiveWorkspace,
  guard: Guard,
  client: ClientState,
): void {
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
  const able = () => client.capabilities;
  registerWatchedFiles(connection, client);
  registerProgress(connection, workspace, client);

  connection.onDefinition(
    on('definition', [], async (document, { position }) => {
      const links = await definition(workspace, document, position);
      return able().textDocument?.definition?.linkSupport === true ? links : links.map(location);
    }) as Parameters<Connection['onDefinition']>[0],
  );
  connection.onReferences(
    on('references', [], (document, { position, context }) =>
      references(workspace, document, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(on('highlight', [], (document, { position }) => highlights(document, position)));
  connection.onPrepareRename(
    on('prepare rename', null, async (document, { position }) =>
      granted(await prepareRename(workspace, document, position)),
    ),
  );
  connection.onRenameRequest(
    on('rename', null, async (document, { position, newName }) =>
      edit(granted(await rename(workspace, document, position, newName)), client),
    ),
  );
  connection.onDocumentSymbol(
    on('symbols', [], (document) => {
      const symbols = documentSymbols(workspace, document);
      const tree = able().textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true;
      return tree ? symbols : flatSymbols(document, symbols);
    }),
  );
  connection.onWorkspaceSymbol(guard('workspace symbols', [], ({ query }) => workspaceSymbols(workspace, query)));
  connection.onDocumentLinks(on('links', [], (document) => documentLinks(workspace, document)));
  connection.languages.onLinkedEditingRange(
    on('linked names', null, (document, { position }) => linkedNames(document, position)),
  );
  connection.workspace.onWillRenameFiles(
    guard('will rename', null, async ({ files }) => {
      const made = await pathsAfterMoves(workspace, files);
      return made === null ? null : edit(made, client);
    }),
  );
}

function location({ targetUri, targetSelectionRange }: LocationLink) {
  return { uri: targetUri, range: targetSelectionRange };
}

/** A refusal is told by its reason. */
function granted<T extends object>(answer: T | Refusal): T {
  if ('refused' in answer) throw new ResponseError(LSPErrorCodes.RequestFailed, answer.refused);
  return answer;
}

function edit(made: WorkspaceEdit, { capabilities }: ClientState): WorkspaceEdit {
  return capabilities.workspace?.workspaceEdit?.documentChanges === true ? made : plainEdit(made);
}
