import type { Counters } from '../../base/counters';
import type { Span } from '../../base/span';
import type { Finding } from '../../findings/finding';
import type { StatementNode, Tree } from '../tree';
import type { Role } from '../vocabulary/record';
import { isKeyword, keywordsIn } from '../vocabulary/statements';
import { nearest } from '../nearest';
import { splitLines, type SourceLine } from './lines';
import { readClauseLine } from './clauseLine';
import { readHeadLine } from './headLine';
import { movedBy, type Around, type KeptStatement, type KeptStatements } from './keptStatements';
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
 * text. A BOM is dropped; offsets count from behind it. `counters` counts `tokens`, `lines` and `statements` read; those
 * among `kept` are not read again, which changes nothing but the work.
 */
export function parse(text: string, counters: Counters | null = null, kept: KeptStatements | null = null): Tree {
  return new TextParser(withoutMark(text), counters, kept).run().tree;
}

export function parseLines(text: string, counters: Counters | null = null): ParsedText {
  return new TextParser(withoutMark(text), counters, null).run();
}

function withoutMark(text: string): string {
  return text.startsWith('\ufeff') ? text.slice(1) : text;
}

interface Hope {
  readonly text: string;
  readonly around: Around;
  readonly after: Around;
  readonly start: number;
  /** How many there were before it. */
  readonly findings: number;
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
  /** What the open statement is kept under once it is finished; null: it is not. */
  private hope: Hope | null = null;

  constructor(
    readonly text: string,
    readonly counters: Counters | null,
    private readonly kept: KeptStatements | null,
  ) {}

  run(): ParsedText {
    const lines = splitLines(this.text);
    for (let i = 0; i < lines.length;) {
      const next = this.kept === null ? i + 1 : nextHead(lines, i);
      if (this.kept !== null && lines[i].kind === 'head') this.take(this.kept, lines, i, next);
      else for (let k = i; k < next; k++) this.read(lines[k]);
      i = next;
    }
    this.settle();
    this.close();
    if (!this.roleDecided && !this.strayClauses) this.missRole(this.firstHead ?? { start: 0, end: 0 });
    this.findings.sort((a, b) => startOf(a) - startOf(b));
    const tree = { text: this.text, role: this.role, statements: this.finished, findings: this.findings };
    return { tree, lines: this.lines };
  }

  private read(line: SourceLine): void {
    this.counters?.add('lines');
    this.lines.push(this.line(line));
  }

  /** Takes the statement of these lines, a head first, from those kept, or reads them and will keep what they come to. */
  private take(kept: KeptStatements, lines: readonly SourceLine[], from: number, to: number): void {
    this.settle();
    const { start } = lines[from];
    const text = this.text.slice(start, lines[to - 1].lineEnd);
    const around = { role: this.role, roleDecided: this.roleDecided };
    const known = kept.get(text, around);
    if (known !== undefined && !this.goesOn(lines[to])) {
      this.close();
      if (this.isNext(known)) {
        this.place(known, start);
        return;
      }
    }
    const findings = this.findings.length;
    const before = this.open;
    this.read(lines[from]);
    const isNew = this.open !== before;
    for (let i = from + 1; i < to; i++) this.read(lines[i]);
    const after = { role: this.role, roleDecided: this.roleDecided };
    this.hope = isNew ? { text, around, after, start, findings } : null;
  }

  /** Whether a line in the first column may yet belong to the statement above it. */
  private goesOn(line: SourceLine | undefined): boolean {
    if (line === undefined) return false;
    const word = new LineReader(this.text, line, new Map(), null).peekName();
    return word === null || !isKeyword(word);
  }

  /** Whether as many of its name stand above it as where it was kept: its id says so. */
  private isNext({ identity, times, single }: KeptStatement): boolean {
    return (this.ids.get(identity) ?? 0) === times - 1 && (single === null || !this.kinds.has(single));
  }

  private place({ node, identity, times, single, after }: KeptStatement, start: number): void {
    this.ids.set(identity, times);
    if (single !== null) this.countKind(single);
    this.firstHead ??= { start, end: start };
    this.strayClauses = false;
    this.role = after.role;
    this.roleDecided = after.roleDecided;
    this.finished.push(movedBy(node, start));
  }

  /** All lines of the open statement are read: with a finding in one of them it is not kept. */
  private settle(): void {
    if (this.hope !== null && this.findings.length > this.hope.findings) this.hope = null;
  }

  private keep(open: OpenStatement, node: StatementNode): void {
    const { kept, hope } = this;
    this.hope = null;
    if (kept === null || hope === null || open.record === null || node.broken) return;
    kept.set(hope.text, hope.around, {
      node: movedBy(node, -hope.start),
      identity: open.identity,
      times: this.ids.get(open.identity) ?? 1,
      single: open.record.repeatable ? null : open.record.kind,
      after: hope.after,
    });
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
      this.counters?.add('statements');
      const node = this.open.close(this.text, this.prefix, this.ids);
      this.finished.push(node);
      this.keep(this.open, node);
    }
    this.open = null;
  }

  private get prefix(): string {
    return this.role === 'method' ? 'method/' : '';
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

/** The line of the next head behind a line. */
function nextHead(lines: readonly SourceLine[], from: number): number {
  let next = from + 1;
  while (next < lines.length && lines[next].kind !== 'head') next++;
  return next;
}

function startOf(finding: Finding): number {
  return 'span' in finding.at ? finding.at.span.start : 0;
}
