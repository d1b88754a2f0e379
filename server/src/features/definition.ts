import type { LocationLink, Position } from 'vscode-languageserver-types';
import { fileNameAt } from './files/fileNames';
import { isThere } from './files/paths';
import { isOverride, occurrenceAt } from './names/occurrences';
import { definitionsFor, type PlacedOccurrence } from './names/scope';
import { statementAt, tokensAt } from './statements';
import type { GlossDocument, Workspace } from './workspace';

const start = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/**
 * Where what stands at a position is defined: a name by its statement (here or in the method, with the override that
 * changes it), an override by the method's statement, a file by itself, the code of a finding by its page.
 */
export async function definition(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
): Promise<LocationLink[]> {
  const offset = document.positions.offset(position);
  return (
    nameDefinition(document, offset) ??
    (await fileDefinition(workspace, document, offset)) ??
    codePage(workspace, document, offset)
  );
}

function nameDefinition(document: GlossDocument, offset: number): LocationLink[] | null {
  const at = nameAt(document, offset);
  if (at === null) return null;
  const all = definitionsFor(document, at.name);
  const others = all.filter((o) => o.text.uri !== document.uri || o.span.start !== at.span.start);
  return (others.length > 0 ? others : all).map((o) => link(document, at.origin, o));
}

/** The name at an offset; the keyword of an override stands for the statement it changes. */
function nameAt(document: GlossDocument, offset: number) {
  const at = occurrenceAt(document.tree, offset);
  if (at !== null) return { name: at.name, span: at.span, origin: at.span };
  const node = statementAt(document.tree, offset);
  const keyword = node?.tokens.get('keyword');
  const span = node?.tokens.get('name');
  if (node === null || keyword === undefined || span === undefined || node.name === null) return null;
  if (offset > keyword.end || !isOverride(document.tree, node)) return null;
  return { name: node.name, span, origin: keyword };
}

function link(document: GlossDocument, origin: PlacedOccurrence['span'], to: PlacedOccurrence): LocationLink {
  return {
    originSelectionRange: document.positions.range(origin),
    targetUri: to.text.uri,
    targetRange: to.text.positions.range(to.node.span),
    targetSelectionRange: to.text.positions.range(to.span),
  };
}

async function fileDefinition(
  workspace: Workspace,
  document: GlossDocument,
  offset: number,
): Promise<LocationLink[] | null> {
  const named = fileNameAt(document.tree, offset);
  if (named === null) return null;
  const { host } = document.project;
  const path = host.resolve(document.path, named.file);
  if (!(await isThere(host, path))) return [];
  return [page(document, named.span, workspace.uriOf(path))];
}

function codePage(workspace: Workspace, document: GlossDocument, offset: number): LocationLink[] {
  const code = codeAt(document, offset);
  const uri = code === null ? null : workspace.pageOf(code.code);
  return uri === null ? [] : [page(document, code!.span, uri)];
}

function codeAt(document: GlossDocument, offset: number) {
  const node = statementAt(document.tree, offset);
  const on =
    node === null ? undefined : tokensAt(node, offset).find(({ token }) => /^(?:allow(?:#\d+)?\.)?code$/.test(token));
  return on === undefined ? null : { code: document.tree.text.slice(on.span.start, on.span.end), span: on.span };
}

function page(document: GlossDocument, origin: PlacedOccurrence['span'], targetUri: string): LocationLink {
  return {
    originSelectionRange: document.positions.range(origin),
    targetUri,
    targetRange: start,
    targetSelectionRange: start,
  };
}
