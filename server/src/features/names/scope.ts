import type { GlossDocument, GlossText, Workspace } from '../workspace';
import { occurrencesOfName, type Occurrence } from './occurrences';

/** A name and the texts in which it means the same. */
export interface NameScope {
  readonly name: string;
  /**
   * The text that owns it first: the method where that mentions the name, then every gloss of the workspace that uses the
   * method; else the gloss alone.
   */
  readonly texts: readonly GlossText[];
  /** Whether a method owns it. */
  readonly shared: boolean;
  /** The gloss names a method that cannot be read: the name may come from there. */
  readonly hidden: boolean;
}

export interface PlacedOccurrence extends Occurrence {
  readonly text: GlossText;
}

/** Where a name of a document is known. */
export async function scopeOf(workspace: Workspace, document: GlossDocument, name: string): Promise<NameScope> {
  const owner = document.tree.role === 'method' ? document : methodOf(document);
  if (owner !== null && (owner === document || occurrencesOfName(owner.tree, name).length > 0)) {
    const users = await usersOf(workspace, document, owner);
    return { name, texts: [owner, ...users], shared: true, hidden: false };
  }
  return { name, texts: [document], shared: false, hidden: owner === null && usedMethod(document) !== null };
}

/** The method a gloss imports, where what it names is one. */
export function methodOf(document: GlossDocument): GlossText | null {
  return document.method?.tree.role === 'method' ? document.method : null;
}

/** Glosses of the workspace that use a method, the document as it stands among them. */
export async function usersOf(
  workspace: Workspace,
  document: GlossDocument,
  method: GlossText,
): Promise<readonly GlossText[]> {
  const { host } = document.project;
  const users = (await workspace.glosses()).filter((gloss) => {
    const file = usedMethod(gloss);
    return file !== null && host.resolve(gloss.path, file) === method.path && gloss.uri !== document.uri;
  });
  return document.uri === method.uri ? users : [document, ...users];
}

/** The file of the method a run gloss names. */
export function usedMethod({ tree }: GlossText): string | null {
  if (tree.role !== 'run') return null;
  for (const { statement } of tree.statements) if (statement?.kind === 'use method') return statement.file;
  return null;
}

/** All places of the name. */
export function placesOf(scope: NameScope): readonly PlacedOccurrence[] {
  return scope.texts.flatMap((text) => occurrencesOfName(text.tree, scope.name).map((o) => ({ ...o, text })));
}

/**
 * The places that define a name for one text: its statement (of the method before the gloss), the override that changes
 * it, the `let` that gives a `given` its value; of a part that no statement defines, the sum.
 */
export function definitionsFor(document: GlossDocument, name: string): readonly PlacedOccurrence[] {
  const method = document.tree.role === 'method' ? null : methodOf(document);
  const own = placesOf({ name, texts: [document], shared: false, hidden: false });
  const before = method === null ? [] : placesOf({ name, texts: [method], shared: true, hidden: false });
  const first = (list: readonly PlacedOccurrence[]): PlacedOccurrence | undefined =>
    list.find((o) => o.role === 'definition');
  const statement = first(before) ?? first(own);
  if (statement === undefined) return [...before, ...own].filter((o) => o.role === 'part').slice(0, 1);
  const given = statement.node.statement?.kind === 'given';
  const further = own.find(
    (o) => o !== statement && (o.role === 'override' || (given && o.node.statement?.kind === 'let')),
  );
  return further === undefined ? [statement] : [statement, further];
}
