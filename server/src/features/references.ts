import {
  DocumentHighlightKind,
  type DocumentHighlight,
  type Location,
  type Position,
} from 'vscode-languageserver-types';
import { fileNameAt, fileNamesIn } from './files/fileNames';
import { occurrenceAt, occurrencesOfName } from './names/occurrences';
import { definitionsFor, placesOf, scopeOf } from './names/scope';
import type { GlossDocument, Workspace } from './workspace';

/**
 * Every place where the name or the file at a position stands: a name of a method in all glosses of the workspace that
 * use it, a file in all glosses that name it.
 */
export async function references(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
  withDeclaration: boolean,
): Promise<Location[]> {
  const offset = document.positions.offset(position);
  const at = occurrenceAt(document.tree, offset);
  if (at === null) return fileReferences(workspace, document, offset);
  const scope = await scopeOf(workspace, document, at.name);
  const sums = onlyParts(document, at.name);
  return placesOf(scope)
    .filter((o) => withDeclaration || !(o.role === 'definition' || (sums && o.role === 'part')))
    .map((o) => ({ uri: o.text.uri, range: o.text.positions.range(o.span) }));
}

async function fileReferences(workspace: Workspace, document: GlossDocument, offset: number): Promise<Location[]> {
  const at = fileNameAt(document.tree, offset);
  if (at === null) return [];
  const { host } = document.project;
  const path = host.resolve(document.path, at.file);
  const glosses = await workspace.glosses();
  const others = glosses.filter((gloss) => gloss.uri !== document.uri);
  return [document, ...others].flatMap((gloss) =>
    fileNamesIn(gloss.tree)
      .filter((named) => host.resolve(gloss.path, named.file) === path)
      .map((named) => ({ uri: gloss.uri, range: gloss.positions.range(named.inner) })),
  );
}

/** The places of the name at a position in this text: what defines or changes it as written, the rest as read. */
export function highlights(document: GlossDocument, position: Position): DocumentHighlight[] {
  const at = occurrenceAt(document.tree, document.positions.offset(position));
  if (at === null) return [];
  const sums = onlyParts(document, at.name);
  return occurrencesOfName(document.tree, at.name).map((o) => {
    const written = o.role === 'definition' || o.role === 'override' || (sums && o.role === 'part');
    const kind = written ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
    return { range: document.positions.range(o.span), kind };
  });
}

/** A part of a sum that no statement defines is declared by the sum. */
function onlyParts(document: GlossDocument, name: string): boolean {
  return definitionsFor(document, name).every((o) => o.role === 'part');
}
