import type { SnippetTextEdit, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import type { Span } from '../../base/span';
import type { GlossRole } from '../../findings/finding';
import type { Abilities } from '../abilities';
import type { GlossText, Results } from '../workspace';

/** One change of one of the two texts of an evaluation, in offsets. */
export interface Change {
  readonly file: GlossRole;
  readonly span: Span;
  readonly text: string;
}

/** The changes as an edit of the client's documents, with the versions they were made for. Null where a text is not known. */
export function workspaceEdit(
  { gloss, method }: Pick<Results, 'gloss' | 'method'>,
  changes: readonly Change[],
  abilities: Abilities,
): WorkspaceEdit | null {
  const texts = new Map<GlossText, Change[]>();
  for (const change of changes) {
    const text = change.file === 'method' ? method : gloss;
    if (text === null) return null;
    texts.set(text, [...(texts.get(text) ?? []), change]);
  }
  // The cursor goes into the empty reason, where there is one and only one.
  const snippet = abilities.snippetEdits && abilities.documentChanges && changes.length === 1;
  const documentChanges: TextDocumentEdit[] = [...texts].map(([text, own]) => ({
    textDocument: { uri: text.uri, version: text.version },
    edits: own.map((change) => (snippet ? withCursor(text, change) : plainEdit(text, change))),
  }));
  if (abilities.documentChanges) return { documentChanges };
  return {
    changes: Object.fromEntries([...texts].map(([text, own]) => [text.uri, own.map((c) => plainEdit(text, c))])),
  };
}

function plainEdit({ positions }: GlossText, { span, text }: Change): TextEdit {
  return { range: positions.range(span), newText: text };
}

function withCursor(text: GlossText, change: Change): TextEdit | SnippetTextEdit {
  const parts = change.text.split('""');
  if (parts.length !== 2) return plainEdit(text, change);
  const [before, behind] = parts.map((part) => part.replace(/[\\$}]/g, '\\$&'));
  const value = `${before!}"\${1:reason}"${behind!}`;
  return { range: text.positions.range(change.span), snippet: { kind: 'snippet', value } };
}

/** Groups of changes that do not overlap those taken before; a group is taken whole or not at all. */
export function apart(groups: readonly (readonly Change[])[]): Change[] {
  const taken: Change[] = [];
  for (const group of groups) if (!group.some((a) => taken.some((b) => overlap(a, b)))) taken.push(...group);
  return taken;
}

function overlap({ file, span: a }: Change, { file: other, span: b }: Change): boolean {
  if (file !== other) return false;
  return (a.start < b.end && b.start < a.end) || (a.start === b.start && (a.end === a.start || b.end === b.start));
}

/** The end of the line an offset is in, without its line end. */
export function lineEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at += 1;
  return at;
}

export function lineBreak(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** The whole line that holds an offset, its end with it. */
export function wholeLine(text: string, offset: number): Span {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const feed = text.indexOf('\n', offset);
  return { start, end: feed < 0 ? text.length : feed + 1 };
}

/** A statement on a line of its own at the end of a text. */
export function atEnd(text: string, statement: string): Pick<Change, 'span' | 'text'> {
  const eol = lineBreak(text);
  const gap = text === '' || /[\r\n]$/.test(text) ? '' : eol;
  return { span: { start: text.length, end: text.length }, text: `${gap}${statement.split('\n').join(eol)}${eol}` };
}
