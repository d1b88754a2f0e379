import type { Counters } from '../../base/counters';
import type { Span } from '../../base/span';
import type { Finding } from '../../findings/finding';
import type { StatementNode, Tree } from '../tree';
import type { Role } from '../vocabulary/record';
import { keywordsIn } from '../vocabulary/statements';
import { nearest } from '../nearest';
import { splitLines, type SourceLine } from './lines';
import { readClauseLine } from './clauseLine';
import { readHeadLine } from './headLine';
import { LineReader, replaceBy } from './reader';
import type { OpenStatement } from './statement';

/**
 * What a line came to. `statement`: index among the statements. `word`: what stands first, the clause word or the
 * keyword. `untouched`: a line with a finding, or below one.
 */
export interface ParsedLine {
  readonly line: SourceLine;
  readonly as: 'blank' | 'comment' | 'version' | 'head' | 'clause' | 'untouched';
  readonly statement: number;
  readonly word: Span | null;
}

/** A tree with what each line of the text came to. */
export interface ParsedText {
  readonly tree: Tree;
  readonly lines: readonly ParsedLine[];
}

/**
 * Reads a gloss or a method. There is always a tree, whatever the text is, and the work grows with the length of the
 * text. A BOM is dropped; offsets count from behind it. `counters` counts `tokens` and `lines`.
 */
export function parse(text: string, counters: Counters | null = null): Tree {
  return parseLines(text, counters).tree;
}

export function parseLines(text: string, counters: Counters | null = null): ParsedText {
  return new TextParser(text.startsWith('\ufeff') ? text.slice(1) : text, counters).run();
}

/** What is known of the text while its lines are read one by one. */
export class TextParser {
  role: Role | null = null;
  /** Whether the first statement, which decides the role, has been passed. */
  roleDecided = false;
  /** The statement that clauses go to; null before the first head. */
  open: OpenStatement | null = null;
  private readonly findings: Finding[] = [];
  private readonly finished: StatementNode[] = [];
  private readonly ids = new Map<string, number>();
  private readonly kinds = new Map<string, number>();
  private readonly lines: ParsedLine[] = [];
  private strayClauses = false;
  private firstHead: Span | null = null;

  constructor(
    readonly text: string,
    readonly counters: Counters | null,
  ) {}

  run(): ParsedText {
    for (const line of splitLines(this.text)) {
      this.counters?.add('lines');
      this.lines.push(this.line(line));
    }
    this.close();
    if (!this.roleDecided && !this.strayClauses) this.missRole(this.firstHead ?? { start: 0, end: 0 });
    this.findings.sort((a, b) => startOf(a) - startOf(b));
    const tree = { text: this.text, role: this.role, statements: this.finished, findings: this.findings };
    return { tree, lines: this.lines };
  }

  private line(line: SourceLine): ParsedLine {
    if (line.kind === 'blank' || line.kind === 'comment') {
      return { line, as: line.kind, statement: this.finished.length - 1, word: null };
    }
    return line.kind === 'head' ? this.headLine(line) : this.clauseLine(line);
  }

  private headLine(line: SourceLine): ParsedLine {
    const tokens = new Map<string, Span>();
    const reader = new LineReader(this.text, line, tokens, this.counters);
    if (line.start === 0 && reader.peekName() === 'language') return this.version(line, reader);
    this.firstHead ??= { start: line.first, end: line.end };
    const read = readHeadLine(this, line, reader, tokens);
    this.report(reader);
    if (read !== 'same statement') {
      this.close();
      this.open = read;
      this.strayClauses = false;
    } else {
      this.open?.grow(line.end);
    }
    const good = reader.problem === null;
    return {
      line,
      as: good ? 'head' : 'untouched',
      statement: this.finished.length,
      word: tokens.get('keyword') ?? null,
    };
  }

  private version(line: SourceLine, reader: LineReader): ParsedLine {
    reader.name();
    const version = reader.take(/\d+/y);
    if (version?.value !== '1') {
      const span = version?.span ?? reader.found().span;
      reader.fail('unexpected-text', span, 'this program reads `language 1`', [replaceBy(span, '1')]);
    } else if (!reader.atEnd()) {
      reader.expected('the end of the line');
    }
    this.report(reader);
    return { line, as: reader.problem === null ? 'version' : 'untouched', statement: -1, word: null };
  }

  private clauseLine(line: SourceLine): ParsedLine {
    const statement = this.finished.length;
    const untouched: ParsedLine = { line, as: 'untouched', statement, word: null };
    if (this.open === null) {
      this.stray(line);
      return untouched;
    }
    this.open.grow(line.end);
    // Clauses under a broken head are not reported.
    if (this.open.broken || this.open.record === null) return untouched;
    const reader = new LineReader(this.text, line, this.open.tokens, this.counters);
    const word = readClauseLine(this.open, this.open.record, line, reader);
    this.report(reader);
    return reader.problem === null ? { line, as: 'clause', statement, word } : untouched;
  }

  /** Only the first of several lines in a row: they have one cause. */
  private stray(line: SourceLine): void {
    if (this.strayClauses) return;
    this.strayClauses = true;
    const reader = new LineReader(this.text, line, new Map(), null);
    const word = reader.peekName();
    const span = reader.found().span;
    const statement = word !== null && keywordsIn('run').includes(word);
    const indent = { start: line.start, end: line.first };
    reader.fail(
      'clause-without-statement',
      span,
      statement
        ? `\`${word}\` begins a statement and stands in the first column`
        : 'an indented line belongs to the statement above it, and there is none',
      statement ? [{ ...replaceBy(indent, ''), title: 'Remove the blanks before it' }] : [],
    );
    this.report(reader);
  }

  private close(): void {
    if (this.open !== null) {
      this.finished.push(this.open.close(this.text, this.role === 'method' ? 'method/' : '', this.ids));
    }
    this.open = null;
  }

  private report(reader: LineReader): void {
    if (reader.problem !== null) this.findings.push(reader.problem);
  }

  missRole(at: Span): void {
    this.roleDecided = true;
    this.findings.push({
      code: 'role-missing',
      severity: 'error',
      at: { file: 'gloss', span: at },
      message: 'The first statement says what this is: `run "FILE"` beside a run, `method "TITLE"` for a method.',
      related: [],
      fixes: [],
      about: null,
    });
  }

  /** An unknown word in the place of the role is read as the role it is nearest to: the misspelling is said, once. */
  doubtRole(word: string): void {
    const meant = this.roleDecided ? undefined : nearest(word, ['run', 'method'])[0];
    if (meant !== 'run' && meant !== 'method') return;
    this.role = meant;
    this.roleDecided = true;
  }

  /** How many statements of this kind there are, with the one at hand. */
  countKind(kind: string): number {
    const times = (this.kinds.get(kind) ?? 0) + 1;
    this.kinds.set(kind, times);
    return times;
  }
}

function startOf(finding: Finding): number {
  return 'span' in finding.at ? finding.at.span.start : 0;
}
