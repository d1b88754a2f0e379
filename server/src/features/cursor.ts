import type { Span } from '../base/span';
import type { StatementNode, Tree } from '../language/tree';
import { splitLines, type SourceLine } from '../language/syntax/lines';
import { normalName } from '../language/syntax/characters';
import type { Role, StatementRecord } from '../language/vocabulary/record';
import { recordsOf } from '../language/vocabulary/statements';
import { lineTokens, type LineToken } from './lineTokens';

/** The line a cursor stands in, and what it is a line of, also while it is being typed. */
export interface Cursor {
  readonly offset: number;
  readonly line: SourceLine;
  /** `comment`: in a comment, where nothing is completed. */
  readonly place: 'head' | 'clause' | 'comment';
  /** Tokens that end before the word being typed. */
  readonly before: readonly LineToken[];
  /** The word being typed, from its first letter to the cursor; empty between words. */
  readonly typed: Span;
  /** Behind the word at the cursor. */
  readonly wordEnd: number;
  /** What stands behind it on the line, without the comment. */
  readonly rest: string;
  /** The text (in quotation marks) the cursor is in: from behind the mark. */
  readonly quoted: Span | null;
  /** The formula the cursor is in, from behind `M(` to the cursor. */
  readonly formula: Span | null;
  /** The statement whose line or clause it is; null above the first. */
  readonly owner: StatementNode | null;
  /** The record of its keyword; null where no statement begins so. */
  readonly record: StatementRecord | null;
  readonly override: boolean;
}

const wordBefore = /[\p{L}\p{M}\p{Nd}_]*$/u;
const wordAfter = /^[\p{L}\p{M}\p{Nd}_]*/u;

/** What stands around an offset of a text, by its lines alone: the tree knows little of a line that is not complete. */
export function cursorAt(tree: Tree, offset: number): Cursor {
  const { text } = tree;
  const at = Math.min(Math.max(offset, 0), text.length);
  const line = lineAt(text, at);
  const inComment = line.comment !== null && at > line.comment;
  const left = text.slice(line.start, at);
  const place = inComment ? 'comment' : /^[^\S\n]/.test(left) ? 'clause' : 'head';
  const all = lineTokens(text, line.first < at ? line.first : at, at);
  const last = all.at(-1);
  const open = last?.kind === 'open text' ? last : null;
  const formula = last?.kind === 'open formula' ? { start: last.span.start + 2, end: at } : null;
  const word = open === null ? (formula ?? typedWord(left, line.start)) : { start: open.span.start + 1, end: at };
  const wordEnd = open === null ? at + wordAfter.exec(text.slice(at, line.end < at ? at : line.end))![0].length : at;
  const owner = ownerOf(tree, line, place);
  const keyword =
    owner === null ? keywordOf(text, line, place) : keywordOf(text, lineAt(text, owner.span.start), 'head');
  return {
    offset: at,
    line,
    place,
    before: all.filter((token) => token.span.end <= word.start && token !== open && token.kind !== 'open formula'),
    typed: word,
    wordEnd,
    rest: text.slice(Math.min(wordEnd, Math.max(line.end, wordEnd)), Math.max(line.end, wordEnd)),
    quoted: open === null ? null : { start: open.span.start + 1, end: quoteEnd(text, at, line) },
    formula,
    owner,
    ...recordFor(keyword, tree, owner),
  };
}

/** The line that holds an offset; a text that ends with a line end has one more, empty. */
function lineAt(text: string, offset: number): SourceLine {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const feed = text.indexOf('\n', offset);
  const end = feed < 0 ? text.length : feed + 1;
  const line = splitLines(text.slice(start, end))[0];
  if (line === undefined) {
    return { start, first: start, end: start, comment: null, lineEnd: start, next: start, kind: 'blank' };
  }
  const move = (n: number): number => n + start;
  return {
    start,
    first: move(line.first),
    end: move(line.end),
    comment: line.comment === null ? null : move(line.comment),
    lineEnd: move(line.lineEnd),
    next: move(line.next),
    kind: line.kind,
  };
}

/** A run of letters before the cursor; digits alone are a number and no word. */
function typedWord(left: string, start: number): Span {
  const end = start + left.length;
  const word = wordBefore.exec(left)![0];
  const letters = /^[\p{Nd}_]/u.test(word) ? '' : word;
  return { start: end - letters.length, end };
}

/** The closing mark, or the end of the line's content. */
function quoteEnd(text: string, at: number, line: SourceLine): number {
  for (let i = at; i < line.lineEnd; i += 1) {
    if (text[i] === '\\') i += 1;
    else if (text[i] === '"') return i;
  }
  return Math.max(at, line.end);
}

/** The statement that begins in this line, or the last one above it for a clause. */
function ownerOf(tree: Tree, line: SourceLine, place: Cursor['place']): StatementNode | null {
  const { statements } = tree;
  if (place === 'head') return statements.find((s) => s.span.start >= line.start && s.span.start < line.next) ?? null;
  for (let i = statements.length - 1; i >= 0; i -= 1) {
    if (statements[i]!.span.start <= line.start) return statements[i]!;
  }
  return null;
}

function keywordOf(text: string, line: SourceLine, place: Cursor['place']): readonly string[] {
  if (place !== 'head') return [];
  return lineTokens(text, line.first, line.end)
    .slice(0, 2)
    .map((token) => (token.kind === 'word' ? normalName(token.text) : ''));
}

function recordFor(
  words: readonly string[],
  tree: Tree,
  owner: StatementNode | null,
): { readonly record: StatementRecord | null; readonly override: boolean } {
  const override = words[0] === 'override';
  const keyword = override ? words[1] : words[0];
  if (keyword === undefined) return { record: null, override };
  const role: Role = tree.role ?? 'run';
  const records = recordsOf(keyword);
  // The very first `method` of a text is the title of one.
  const first = owner === null || tree.statements[0] === owner;
  const record = records.find((r) => r.roles.includes(first && keyword === 'method' ? 'method' : role)) ?? null;
  return { record: override && record?.overridable !== true ? null : record, override };
}
