import type { ClientCapabilities } from 'vscode-languageserver';
import { approveCommand } from '../features/actions/approveAgain';
import type { Abilities, TextFormat } from '../features/abilities';

/** What the client told at the start, as far as answers depend on it. */
export function abilitiesOf({ textDocument, workspace, experimental }: ClientCapabilities): Abilities {
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
    approves: runsCommand(experimental, approveCommand),
  };
}

/** Markdown where the client reads it, wherever it stands in the list; plain text else. */
function format(known: readonly string[] | undefined): TextFormat {
  return known?.includes('markdown') === true ? 'markdown' : 'plaintext';
}

/** Commands of ours that a client says it has: `experimental.thermogloss.commands`. */
function runsCommand(experimental: unknown, command: string): boolean {
  const ours = (experimental as { thermogloss?: { commands?: unknown } } | null | undefined)?.thermogloss?.commands;
  return Array.isArray(ours) && ours.includes(command);
}
