import type { Position, Range, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { isName, normalName } from '../language/syntax/characters';
import { fileNameAt } from './files/fileNames';
import { occurrenceAt, occurrencesOfName, type Occurrence } from './names/occurrences';
import { readsOtherwise } from './names/readAlike';
import { definitionsFor, methodOf, placesOf, scopeOf, type NameScope, type PlacedOccurrence } from './names/scope';
import { unreadMentions } from './names/unreadMentions';
import { statementAt } from './statements';
import type { GlossDocument, GlossText, Workspace } from './workspace';

/** Why a name is not changed, as a sentence for people. */
export interface Refusal {
  readonly refused: string;
}

export interface Renamable {
  readonly range: Range;
  readonly placeholder: string;
}

/** Whether the name at a position can be changed. */
export async function prepareRename(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
): Promise<Renamable | Refusal> {
  const found = await renaming(workspace, document, position);
  if ('refused' in found) return found;
  return { range: document.positions.range(found.at.span), placeholder: found.at.name };
}

/**
 * Changes the name at a position wherever it means the same: in the gloss, or, of a method's name, in the method and
 * every gloss of the workspace that uses it. Refused with a reason where the new name is none, is taken in one of these
 * texts or would be read as something else, and where a line that mentions the name cannot be read.
 */
export async function rename(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
  newName: string,
): Promise<WorkspaceEdit | Refusal> {
  const found = await renaming(workspace, document, position);
  if ('refused' in found) return found;
  const name = normalName(newName.trim());
  if (!isName(name)) {
    return { refused: `\`${newName}\` is no name: a letter, then letters, digits and _.` };
  }
  if (name === found.at.name) return { documentChanges: [] };
  const taken = takenBy(document, found.scope, name);
  if (taken !== null) return taken;
  const edits: TextDocumentEdit[] = [];
  for (const text of found.scope.texts) {
    const places = found.places.filter((o) => o.text === text);
    if (places.length === 0) continue;
    const other = readsOtherwise(text, places, name);
    if (other !== null)
      return {
        refused: `With \`${name}\` ${where(document, text, other.span.start)} would be read otherwise.`,
      };
    edits.push({
      textDocument: { uri: text.uri, version: text.version },
      edits: places.map(({ span }) => ({ range: text.positions.range(span), newText: name })),
    });
  }
  return { documentChanges: edits };
}

interface Renaming {
  readonly at: Occurrence;
  readonly scope: NameScope;
  readonly places: readonly PlacedOccurrence[];
}

async function renaming(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
): Promise<Renaming | Refusal> {
  const offset = document.positions.offset(position);
  const at = occurrencesHere(document, offset);
  if (at === null) return { refused: notAName(document, offset) };
  const scope = await scopeOf(workspace, document, at.name);
  const defined = definitionsFor(document, at.name);
  if (scope.hidden && !defined.some((o) => o.role !== 'part')) {
    return { refused: `The method of this gloss cannot be read, and \`${at.name}\` may come from it.` };
  }
  if (defined.length === 0)
    return { refused: `Nothing is called \`${at.name}\` yet: there is no statement to rename.` };
  for (const text of scope.texts) {
    const [unread] = unreadMentions(text, at.name);
    if (unread !== undefined) {
      return {
        refused: `${capital(where(document, text, unread.start))} mentions \`${at.name}\` and cannot be read; mend it first.`,
      };
    }
  }
  return { at, scope, places: placesToChange(scope, document, at) };
}

/** The name itself, not the quantity behind it. */
function occurrencesHere(document: GlossDocument, offset: number): Occurrence | null {
  const at = occurrenceAt(document.tree, offset);
  return at !== null && at.span.start <= offset && offset <= at.span.end ? at : null;
}

/**
 * A second definition of a name is not computed and nothing refers to it: renamed by itself, it alone changes, and it
 * stays as it is where the first is renamed.
 */
function placesToChange(scope: NameScope, document: GlossDocument, at: Occurrence): readonly PlacedOccurrence[] {
  const places = placesOf(scope);
  const [first] = scope.texts;
  const second = (o: PlacedOccurrence): boolean => {
    if (o.role !== 'definition') return false;
    const standing = places.find((p) => p.role === 'definition' && (p.text === first || p.text === o.text))!;
    return standing !== o && !givesValue(standing, o);
  };
  const own = places.find((o) => o.text.uri === document.uri && o.span.start === at.span.start);
  return own !== undefined && second(own) ? [own] : places.filter((o) => !second(o));
}

/** `let` in a run gives a `given` its value. */
function givesValue(standing: PlacedOccurrence, o: PlacedOccurrence): boolean {
  const kinds = [standing, o].map(({ node }) => node.statement?.kind);
  return (kinds[0] === 'given' && kinds[1] === 'let') || (kinds[0] === 'let' && kinds[1] === 'given');
}

function takenBy(document: GlossDocument, scope: NameScope, name: string): Refusal | null {
  // A name of the gloss alone must not meet one of its method.
  const method = document.tree.role === 'method' ? null : methodOf(document);
  const texts = scope.shared || method === null ? scope.texts : [method, ...scope.texts];
  for (const text of texts) {
    const [first] = occurrencesOfName(text.tree, name);
    if (first === undefined) continue;
    return { refused: `\`${name}\` is taken: it stands in ${where(document, text, first.span.start)}.` };
  }
  return null;
}

function notAName(document: GlossDocument, offset: number): string {
  if (fileNameAt(document.tree, offset) !== null) {
    return 'A file is renamed where it lies; the glosses that name it follow where the editor tells of it.';
  }
  const keyword = statementAt(document.tree, offset)?.tokens.get('keyword');
  if (keyword !== undefined && keyword.start <= offset && offset <= keyword.end) {
    return 'A word of the language has no other name; names of statements can be changed.';
  }
  return 'There is no name here that could be changed.';
}

function where(document: GlossDocument, text: GlossText, offset: number): string {
  const line = text.positions.lineOf(offset) + 1;
  return text.uri === document.uri ? `line ${line}` : `line ${line} of ${document.project.host.display(text.path)}`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
