import type { Counters } from '../../base/counters';
import type { Span } from '../../base/span';
import type { FindingCode } from '../../findings/codes';
import type { Finding, Fix } from '../../findings/finding';
import { sentence } from '../sentence';
import { anythingAt, blanksAt, matchAt, nameAt, normalName } from './characters';
import type { SourceLine } from './lines';

/** A piece of the line with where it stood. */
export interface Read<T> {
  readonly value: T;
  readonly span: Span;
}

/** An edit of this text; inserting is replacing an empty span. */
export interface TextEdit {
  readonly span: Span;
  readonly text: string;
}

/**
 * Reads one line from left to right. Every method that reads gives null where the line is not as it should be, having
 * called `fail`; only the first failure of a line counts, since an error takes the rest of its line.
 */
export class LineReader {
  at: number;
  /** The token read last: where the line ends too early, this is what is pointed at. */
  last: Span;
  problem: Finding | null = null;
  /** The name the line defines, also when it breaks behind it. */
  defines: string | null = null;
  /** What tells the statement from others of the text, as far as it was read: `step First`. */
  identity: string | null = null;
  /** Within the brackets of a function, where a comma between digits may have been meant to separate. */
  inCall = false;
  /** Where a word behind a number may have been meant as a factor. */
  inExpression = false;
  /** Put before the tokens noted: the clause they belong to. */
  prefix = '';
  readonly end: number;

  constructor(
    readonly text: string,
    line: SourceLine,
    private readonly tokens: Map<string, Span>,
    private readonly counters: Counters | null,
  ) {
    this.at = line.first;
    this.end = line.end;
    this.last = { start: line.first, end: line.first };
  }

  note(token: string, span: Span): void {
    this.tokens.set(this.prefix === '' ? token : `${this.prefix}.${token}`, span);
  }

  skipBlanks(): void {
    const blanks = matchAt(blanksAt, this.text, this.at);
    if (blanks !== null) this.at = Math.min(this.end, this.at + blanks[0].length);
  }

  atEnd(): boolean {
    this.skipBlanks();
    return this.at >= this.end;
  }

  /** The token of this pattern at the place, blanks before it skipped, or null without a failure. */
  take(pattern: RegExp): Read<string> | null {
    if (this.atEnd()) return null;
    const found = matchAt(pattern, this.text, this.at);
    return found === null ? null : this.consume(this.at + found[0].length);
  }

  consume(end: number): Read<string> {
    this.counters?.add('tokens');
    const span = { start: this.at, end };
    this.at = end;
    this.last = span;
    return { value: this.text.slice(span.start, end), span };
  }

  /** Whether this text stands here; it is read if so. */
  sign(text: string): boolean {
    if (this.atEnd() || !this.text.startsWith(text, this.at)) return false;
    this.consume(this.at + text.length);
    return true;
  }

  peekName(): string | null {
    if (this.atEnd()) return null;
    const found = matchAt(nameAt, this.text, this.at);
    return found === null ? null : normalName(found[0]);
  }

  name(): Read<string> | null {
    const found = this.take(nameAt);
    return found === null ? null : { value: normalName(found.value), span: found.span };
  }

  /** Whether this connecting word stands here; it is read if so. */
  word(word: string): boolean {
    return this.peekName() === word && this.name() !== null;
  }

  peek(pattern: RegExp): boolean {
    return !this.atEnd() && matchAt(pattern, this.text, this.at) !== null;
  }

  /** As `peek`, without skipping blanks. */
  peekDirectly(pattern: RegExp): boolean {
    return this.at < this.end && matchAt(pattern, this.text, this.at) !== null;
  }

  /** The span grown to the next blank. */
  whole(span: Span): Span {
    const rest = matchAt(/[^\s]*/y, this.text, span.end)![0].length;
    return { start: span.start, end: Math.min(this.end, span.end + rest) };
  }

  /** The text from a place to where the reader is now. */
  since(start: number): Span {
    return { start, end: Math.max(start, this.last.end) };
  }

  fail(code: FindingCode, span: Span, message: string, fixes: readonly Fix[] = []): null {
    this.problem ??= {
      code,
      severity: 'error',
      at: { file: 'gloss', span },
      message: sentence(message),
      related: [],
      fixes,
      about: null,
    };
    return null;
  }

  /** What stands here instead of what is due. */
  found(): Read<string> {
    if (this.atEnd()) return { value: '', span: this.last };
    const end = Math.min(this.end, this.at + matchAt(anythingAt, this.text, this.at)![0].length);
    return { value: this.text.slice(this.at, end), span: { start: this.at, end } };
  }

  /** `due`: in words, with an article and an example. */
  expected(due: string, fixes: readonly Fix[] = []): null {
    const found = this.found();
    const what = found.value === '' ? 'the line ends here' : `\`${found.value}\` stands here`;
    return this.fail('unexpected-text', found.span, `${what}; due is ${due}`, fixes);
  }
}

export function fix(title: string, edits: readonly TextEdit[], safe = false): Fix {
  return {
    title,
    safe,
    edits: edits.map(({ span, text }) => ({ edit: 'replace', at: { file: 'gloss', span }, text })),
  };
}

/** One edit, named by what it writes. */
export function replaceBy(span: Span, text: string): Fix {
  return fix(`Write \`${text.trim()}\``, [{ span, text }]);
}
