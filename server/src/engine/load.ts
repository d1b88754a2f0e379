import { Cancelled, type Cancellation } from '../base/cancellation';
import type { Counters } from '../base/counters';
import type { Host } from '../base/host';
import type { Outcome } from '../base/outcome';
import type { ColumnsStatement, ReadingStatement, RunStatement } from '../language/model';
import { parse } from '../language/syntax/parse';
import { resolveProgram } from '../language/meaning/resolveProgram';
import type { Effective, Program } from '../language/program';
import type { Tree } from '../language/tree';
import { detectAll, type ReadingChoices } from '../runs/reading/choices';
import { readColumns, type FileColumn } from '../runs/reading/readColumns';
import { readRun } from '../runs/reading/readRun';
import type { RawRun, ReadingProblem } from '../runs/run';

export type { FileColumn };
export type Read = Outcome<RawRun, ReadingProblem>;

/** A blank as it was found: a bare data file, or the run gloss of an empty crucible with its conditions. */
export interface LoadedBlank {
  readonly statement: string;
  readonly file: string;
  readonly data: Read;
  /** The run statement of the blank's own gloss; null for a bare data file. */
  readonly conditions: RunStatement | null;
  /** Display path of the data read. */
  readonly path: string;
}

export interface LoadedJoin {
  readonly statement: string;
  readonly data: Read;
}

export interface Loaded {
  readonly run: Read;
  readonly joins: readonly LoadedJoin[];
  readonly blanks: readonly LoadedBlank[];
}

/** Reads every data file a program names. Each file is read once for one way of reading it. */
export class Loader {
  private readonly reads = new Map<string, Reading>();
  private readonly headers = new Map<string, Promise<readonly FileColumn[]>>();

  constructor(
    private readonly host: Host,
    private readonly counters: Counters,
  ) {}

  /** Forgets what was read from a path, after the file has changed. */
  invalidate(path: string): void {
    for (const kept of [this.reads, this.headers])
      for (const key of [...kept.keys()]) if (key.startsWith(`${path}\n`)) kept.delete(key);
  }

  /** The columns as the header names them; read once for one way of reading the file. */
  columns(path: string, choices: ReadingChoices | null): Promise<readonly FileColumn[]> {
    const asked = { ...(choices ?? detectAll), columns: [] };
    const key = `${path}\n${JSON.stringify(asked)}`;
    const known = this.headers.get(key);
    if (known !== undefined) return known;
    const reading = readColumns(this.host, path, asked);
    this.headers.set(key, reading);
    reading.catch(() => this.headers.delete(key));
    return reading;
  }

  async load(program: Program, from: string, cancellation: Cancellation): Promise<Loaded | null> {
    const run = program.run;
    if (run === null) return null;
    const path = this.host.resolve(from, run.statement.file);
    const main = await this.read(path, choicesFor(program, null), cancellation);
    const joins: LoadedJoin[] = [];
    for (const join of program.joins) {
      const file = this.host.resolve(from, join.statement.file);
      joins.push({
        statement: join.id,
        data: await this.read(
          file,
          { ...(choicesFor(program, join.statement.file) ?? detectAll), purpose: 'joined', of: join.statement.file },
          cancellation,
        ),
      });
    }
    const blanks: LoadedBlank[] = [];
    for (const blank of program.blanks)
      blanks.push(await this.loadBlank(program, blank.id, blank.statement.file, from, cancellation));
    return { run: main, joins, blanks };
  }

  private async loadBlank(
    program: Program,
    statement: string,
    file: string,
    from: string,
    cancellation: Cancellation,
  ): Promise<LoadedBlank> {
    const path = this.host.resolve(from, file);
    if (!file.endsWith('.gloss')) {
      // The run's own columns and reading serve its blanks too, unless they name one.
      const own = choicesFor(program, file) ?? choicesFor(program, null) ?? detectAll;
      const data = await this.read(path, { ...own, of: file }, cancellation);
      return { statement, file, data, conditions: null, path: this.host.display(path) };
    }
    const text = await this.text(path);
    if (text === null) {
      const data: Read = {
        ok: false,
        failure: { problem: 'missing', message: `there is no file ${this.host.display(path)}` },
      };
      return { statement, file, data, conditions: null, path: this.host.display(path) };
    }
    const tree: Tree = parse(text);
    const inner = resolveProgram(tree, null);
    if (inner.run === null) {
      const data: Read = {
        ok: false,
        failure: { problem: 'unreadable', message: `${this.host.display(path)} is no gloss of a run` },
      };
      return { statement, file, data, conditions: null, path: this.host.display(path) };
    }
    const dataPath = this.host.resolve(path, inner.run.statement.file);
    const data = await this.read(dataPath, choicesFor(inner, null), cancellation);
    return { statement, file, data, conditions: inner.run.statement, path: this.host.display(dataPath) };
  }

  async text(path: string): Promise<string | null> {
    return (await this.opened(path))?.text ?? null;
  }

  /** A text with the identity of its file; null where it cannot be read. */
  async opened(path: string): Promise<{ readonly text: string; readonly identity: string } | null> {
    const file = await this.host.read(path);
    if (!file.ok) return null;
    const pieces: Uint8Array[] = [];
    for await (const piece of file.chunks()) pieces.push(piece.slice());
    const all = new Uint8Array(pieces.reduce((n, p) => n + p.length, 0));
    let at = 0;
    for (const piece of pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    return { text: this.host.decode(all), identity: file.identity };
  }

  /** Who asks for what is being read waits for the same reading; it stops where nobody wants it any more. */
  async read(path: string, choices: ReadingChoices | null, cancellation: Cancellation): Promise<Read> {
    const key = `${path}\n${JSON.stringify(choices)}`;
    const reading = this.reads.get(key) ?? this.begin(key, path, choices);
    reading.wanted?.add(cancellation);
    try {
      return await reading.read;
    } catch (error) {
      if (!(error instanceof Cancelled) || cancellation.cancelled) throw error;
      // It was called off just before this one asked.
      return this.read(path, choices, cancellation);
    }
  }

  private begin(key: string, path: string, choices: ReadingChoices | null): Reading {
    const wanted = new Set<Cancellation>();
    const shared: Cancellation = {
      get cancelled() {
        return wanted.size > 0 && [...wanted].every((one) => one.cancelled);
      },
    };
    const read = readRun(this.host, path, choices ?? detectAll, shared, this.counters);
    const reading: Reading = { read, wanted };
    this.reads.set(key, reading);
    read.then(
      () => (reading.wanted = null),
      // What was cancelled was not read.
      () => this.reads.get(key) === reading && this.reads.delete(key),
    );
    return reading;
  }
}

/** A file while it is read, and afterwards what it came to. */
interface Reading {
  readonly read: Promise<Read>;
  /** Those who wait for it; null: it is read. */
  wanted: Set<Cancellation> | null;
}

/** How a file is to be read: statements that name it, or for null those that name none. */
export function choicesFor(program: Program, file: string | null): ReadingChoices | null {
  const columns = pick<ColumnsStatement>(program.columns, file);
  const reading = pick<ReadingStatement>(program.readings, file);
  if (columns === null && reading === null) return null;
  return {
    purpose: 'run',
    of: file,
    delimiter: reading?.delimiter ?? null,
    decimal: reading?.decimal ?? null,
    skip: reading?.skip ?? null,
    header: reading?.header ?? null,
    footer: reading?.footer ?? null,
    encoding: reading?.encoding ?? null,
    block: reading?.block ?? null,
    columns: (columns?.columns ?? []).map((c) => ({ signal: c.signal, column: c.column, unit: c.unit?.text ?? null })),
  };
}

function pick<S extends { readonly of: string | null }>(list: readonly Effective<S>[], file: string | null): S | null {
  return list.find((e) => e.statement.of === file)?.statement ?? null;
}
