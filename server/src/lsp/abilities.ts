import type { ClientCapabilities } from 'vscode-languageserver';
import type { Abilities, TextFormat } from '../features/abilities';

/** What the client told at the start, as far as answers depend on it. */
export function abilitiesOf({ textDocument, workspace }: ClientCapabilities): Abilities {
  const item = textDocument?.completion?.completionItem;
  const signature = textDocument?.signatureHelp?.signatureInformation;
  return {
    snippets: item?.snippetSupport === true,
    labelDetails: item?.labelDetailsSupport === true,
    commitCharacters: item?.commitCharactersSupport === true,
    insertReplace: item?.insertReplaceSupport === true,
    completionFormat: format(item?.documentationFormat),
    hoverFormat: format(textDocument?.hover?.contentFormat),
    signatureFormat: format(signature?.documentationFormat),
    resolvesHints: textDocument?.inlayHint?.resolveSupport?.properties.includes('tooltip') === true,
    labelOffsets: signature?.parameterInformation?.labelOffsetSupport === true,
    noActiveParameter: signature?.noActiveParameterSupport === true,
    disabledActions: textDocument?.codeAction?.disabledSupport === true,
    documentChanges: workspace?.workspaceEdit?.documentChanges === true,
    snippetEdits: workspace?.workspaceEdit?.snippetEditSupport === true,
  };
}

/** Markdown where the client reads it, wherever it stands in the list; plain text else. */
function format(known: readonly string[] | undefined): TextFormat {
  return known?.includes('markdown') === true ? 'markdown' : 'plaintext';
}
