import { never, stopIfCancelled, type Cancellation } from '../base/cancellation';
import { Counters } from '../base/counters';
import type { Host } from '../base/host';
import { evaluateProgram } from '../evaluation/evaluateProgram';
import { remembered } from '../evaluation/memo';
import type { Evaluated } from '../evaluation/result';
import type { FindingCode } from '../findings/codes';
import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import { KeptStatements } from '../language/syntax/keptStatements';
import { parse } from '../language/syntax/parse';
import { syntaxFindings } from '../language/syntax/syntaxFindings';
import { shapeOf, withMovedWindows } from '../language/meaning/movedWindows';
import { resolveProgram } from '../language/meaning/resolveProgram';
import type { Program } from '../language/program';
import type { Tree } from '../language/tree';
import { acceptance, type Acceptance } from '../evaluation/acceptance';
import { checksOf } from '../evaluation/checkRun';
import { gasTimeline, periodAt } from '../evaluation/checks/gasTimeline';
import { effectiveLimit } from '../evaluation/limits';
import { evaluateStatements } from '../evaluation/evaluateStatements';
import { levelEdges, type LevelEdge } from '../evaluation/levelEdges';
import type { PreparedRun } from '../evaluation/preparedRun';
import { prepareRun } from '../evaluation/prepareRun';
import { proposeWindows, type ProposedStatements } from '../evaluation/proposeWindows';
import { BoundedMemo } from './boundedMemo';
import { curvesOfRun } from './curves/curvesOfRun';
import { lanesInSteps } from './curves/storedRun';
import type { RunCurves } from './curves/runCurves';
import { cellFindings, readingFinding } from './dataFindings';
import { choicesFor, Loader, type FileColumn, type Loaded } from './load';
import type { Abscissa } from '../protocol/view';
import type { Segment } from '../runs/run';
import { Positions } from './positions';
import type { GlossText, InputFile, PlacedFinding, RunSummary, Snapshot } from './snapshot';

const memoEntries = 4000;
/** Texts and programs: of the open glosses, and some more. Unchanged statements are not read again anyway. */
const readingEntries = 32;

/** What a run proposes for its gloss. */
export interface RunProposals extends ProposedStatements {
  readonly segments: readonly Segment[];
}

/** The one interface to everything below: a gloss in, a snapshot out. */
export class Engine {
  private readonly memo = new BoundedMemo(memoEntries);
  private readonly readings: BoundedMemo;
  private readonly statements = new KeptStatements();
  private readonly loader: Loader;
  /** Text of methods as read from disk; forgotten on `invalidate`. */
  private readonly texts = new Map<string, ReturnType<Loader['opened']>>();
  /** What a snapshot was evaluated on; gone with the snapshot. */
  private readonly preparing = new WeakMap<PreparedRun, Promise<void>>();
  private readonly prepared = new WeakMap<Snapshot, PreparedRun>();

  constructor(
    private readonly host: Host,
    readonly counters: Counters = new Counters(),
    /** So many texts and programs are kept. */
    readings = readingEntries,
  ) {
    this.readings = new BoundedMemo(readings);
    this.loader = new Loader(host, counters);
  }

  /** A file changed on disk (data, blank, method): what was read from it is read anew. */
  invalidate(path: string): void {
    this.loader.invalidate(path);
    this.texts.delete(path);
  }

  /** A text file as it stands (an open text for its file); null where it cannot be read. */
  async text(path: string): Promise<string | null> {
    return (await this.opened(path))?.text ?? null;
  }

  /** Text and names only: never waits for data. */
  meaning(
    text: string,
    method: string | null,
  ): { readonly tree: Tree; readonly method: Tree | null; readonly program: Program } {
    const tree = this.tree(text);
    const methodTree = method === null ? null : this.tree(method);
    const program = remembered(this.readings, `program ${text.length} ${text}${method ?? ''}`, () => {
      this.counters.add('programs');
      return this.program(tree, methodTree);
    });
    return { tree, method: methodTree, program };
  }

  private program(tree: Tree, method: Tree | null): Program {
    const shape = shapeOf(tree, method);
    const before = shape === null ? undefined : (this.readings.get(`shape ${shape}`) as Program | undefined);
    const moved = before === undefined ? null : withMovedWindows(before, tree);
    if (moved !== null) return moved;
    this.counters.add('resolutions');
    const program = resolveProgram(tree, method);
    if (shape !== null) this.readings.set(`shape ${shape}`, program);
    return program;
  }

  /**
   * The curves a snapshot of this engine was evaluated on, blanks subtracted; null where no run was read. Laid over
   * another run they have a key in front of their ids, and their heat flow points as that run's does.
   */
  curvesOf(snapshot: Snapshot, over?: { readonly key: string; readonly run: RunCurves }): RunCurves | null {
    const prepared = this.prepared.get(snapshot);
    if (prepared === undefined) return null;
    return over === undefined ? curvesOfRun(prepared) : curvesOfRun(prepared, over.key, over.run.endothermic);
  }

  /**
   * Makes what a picture of a snapshot looks up, a piece at a time with a pause of the host between: without it the first
   * picture of a long run would make all of it at once.
   */
  async prepareCurves(snapshot: Snapshot, abscissa: Abscissa): Promise<void> {
    const prepared = this.prepared.get(snapshot);
    if (prepared === undefined) return;
    // Who asks meanwhile waits, and then finds nearly all of it made.
    const before = this.preparing.get(prepared) ?? Promise.resolve();
    const own = before.then(async () => {
      const steps = lanesInSteps(prepared, abscissa);
      while (steps.next().done !== true) await this.host.pause();
    });
    this.preparing.set(
      prepared,
      own.catch(() => undefined),
    );
    await own;
  }

  /** Evaluates the gloss at `path`; `text` stands for the file where it is open and unsaved. */
  async evaluate(path: string, text?: string, cancellation: Cancellation = never): Promise<Snapshot> {
    const own = text ?? (await this.opened(path))?.text ?? null;
    if (own === null) return this.unread(path);
    const first = this.tree(own);
    const used = methodFile(first);
    const methodPath = used === null ? null : this.host.resolve(path, used.file);
    const opened = methodPath === null ? null : await this.opened(methodPath);
    const methodText = opened?.text ?? null;
    stopIfCancelled(cancellation);
    const { tree, method, program } = this.meaning(own, methodText);
    const findings: Finding[] = [];
    if (used !== null && methodText === null) {
      const at = { statement: used.id, token: 'file' };
      findings.push(makeFinding('file-missing', at, unreadText(this.host.display(methodPath!))));
    }
    const gloss: GlossText = { path, display: this.host.display(path), tree };
    const methodGloss: GlossText | null =
      method === null ? null : { path: methodPath!, display: this.host.display(methodPath!), tree: method };
    const loaded = await this.loader.load(program, path, cancellation);
    stopIfCancelled(cancellation);
    const evaluated = this.evaluateLoaded(program, loaded, findings);
    const positions = new Positions(tree, method);
    const syntax = [...syntaxFindings(tree, 'gloss'), ...(method === null ? [] : syntaxFindings(method, 'method'))];
    const placed = inPlace(
      [...syntax, ...evaluated.findings].map((f) => positions.place(f, evaluated.acceptance.allowed(f))),
    );
    const snapshot: Snapshot = {
      gloss,
      method: methodGloss,
      run: loaded?.run.ok ? this.summary(loaded, evaluated) : null,
      inputs: this.inputs(loaded, methodGloss, opened?.identity ?? null),
      results: evaluated.results,
      requirements: evaluated.requirements,
      findings: placed,
      constructions: evaluated.constructions,
    };
    if (evaluated.prepared !== null) this.prepared.set(snapshot, evaluated.prepared);
    return snapshot;
  }

  /** The snapshot with findings that are made above the engine, each in its place; what it was evaluated on stays known. */
  withFindings(snapshot: Snapshot, more: readonly Finding[]): Snapshot {
    if (more.length === 0) return snapshot;
    const positions = new Positions(snapshot.gloss.tree, snapshot.method?.tree ?? null);
    const made = {
      ...snapshot,
      findings: inPlace([...snapshot.findings, ...more.map((f) => positions.place(f, null))]),
    };
    const prepared = this.prepared.get(snapshot);
    if (prepared !== undefined) this.prepared.set(made, prepared);
    return made;
  }

  /** What the run of a gloss shows, as windows to write (`proposeWindows`), with its segments; null: no run is read. */
  async proposals(path: string, text: string, cancellation: Cancellation = never): Promise<RunProposals | null> {
    const work = await this.working(path, text, cancellation);
    if (work === null) return null;
    const { run } = work;
    const proposed = remembered(this.memo, `proposals ${run.key}`, () => {
      this.counters.add('proposals');
      return proposeWindows(run);
    });
    return { ...proposed, segments: run.segments };
  }

  /** The nearest level ground beside the written ends of a statement's window; empty where that is no question. */
  async levelEdges(path: string, text: string, name: string): Promise<readonly LevelEdge[]> {
    const work = await this.working(path, text, never);
    if (work === null) return [];
    const limit = (code: FindingCode) => effectiveLimit(work.program, code);
    const outcomes = evaluateStatements(work.program, work.run, limit, this.memo, this.counters);
    const outcome = outcomes.get(name);
    return outcome === undefined ? [] : levelEdges(work.run, outcome);
  }

  /**
   * The columns of a data file as its header names them, also where it is not yet settled what they are; `of`: the file as
   * the gloss names it, null: the run itself.
   */
  async columns(path: string, text: string, of: string | null): Promise<readonly FileColumn[]> {
    const { program } = this.meaning(text, null);
    const file = of ?? program.run?.statement.file ?? null;
    return file === null ? [] : this.loader.columns(this.host.resolve(path, file), choicesFor(program, of));
  }

  /** A gloss with its run read and put together, without evaluating it. */
  private async working(
    path: string,
    text: string,
    cancellation: Cancellation,
  ): Promise<{ readonly program: Program; readonly run: PreparedRun } | null> {
    const used = methodFile(this.tree(text));
    const method = used === null ? null : ((await this.opened(this.host.resolve(path, used.file)))?.text ?? null);
    const { program } = this.meaning(text, method);
    const loaded = await this.loader.load(program, path, cancellation);
    stopIfCancelled(cancellation);
    if (loaded === null || !loaded.run.ok) return null;
    const { run } = prepareRun(program, loaded.run.value, loaded.joins, loaded.blanks, this.memo, this.counters);
    return { program, run };
  }

  private evaluateLoaded(
    program: Program,
    loaded: Loaded | null,
    findings: Finding[],
  ): Evaluated & { acceptance: Acceptance; segments: RunSummary['segments']; prepared: PreparedRun | null } {
    const problems = [...findings, ...readingFindings(program, loaded)];
    if (loaded === null || !loaded.run.ok || program.run === null) {
      const all = [...program.findings, ...problems];
      return {
        results: [],
        requirements: [],
        constructions: [],
        findings: all,
        acceptance: acceptance(program, all),
        segments: [],
        prepared: null,
      };
    }
    const limit = (code: FindingCode) => effectiveLimit(program, code);
    const prepared = prepareRun(program, loaded.run.value, loaded.joins, loaded.blanks, this.memo, this.counters);
    const evaluated = evaluateProgram(
      {
        program,
        run: prepared.run,
        dataFindings: [...problems, ...prepared.findings],
        limit,
        checks: checksOf(
          {
            program,
            prepared,
            raw: loaded.run.value,
            blanks: loaded.blanks,
            joins: loaded.joins,
            display: (path) => this.host.display(path),
            limit,
          },
          this.memo,
        ),
      },
      this.memo,
      this.counters,
    );
    const timeline = gasTimeline(program.run.statement, prepared.run.segments, Infinity);
    const segments = prepared.run.segments.map((s) => ({
      ...s,
      gas: periodAt(timeline, (s.start + s.end) / 2)?.words ?? null,
    }));
    return { ...evaluated, segments, prepared: prepared.run };
  }

  private summary(loaded: Loaded, evaluated: { segments: RunSummary['segments'] }): RunSummary | null {
    if (!loaded.run.ok) return null;
    const raw = loaded.run.value;
    return {
      display: this.host.display(raw.path),
      identity: raw.identity,
      points: raw.points,
      segments: evaluated.segments,
      interpretation: raw.interpretation,
    };
  }

  private inputs(loaded: Loaded | null, method: GlossText | null, identity: string | null): InputFile[] {
    const files: InputFile[] = [];
    for (const blank of loaded?.blanks ?? []) {
      if (!blank.data.ok) continue;
      const { identity, interpretation } = blank.data.value;
      files.push({ role: 'blank', display: blank.path, identity, interpretation });
    }
    for (const join of loaded?.joins ?? []) {
      if (!join.data.ok) continue;
      const { identity, interpretation, path } = join.data.value;
      files.push({ role: 'join', display: this.host.display(path), identity, interpretation });
    }
    if (method !== null && identity !== null) {
      files.push({
        role: 'method',
        display: method.display,
        identity,
        interpretation: null,
      });
    }
    return files;
  }

  private tree(text: string): Tree {
    return remembered(this.readings, `tree ${text}`, () => {
      this.counters.add('parses');
      return parse(text, null, this.statements);
    });
  }

  private opened(path: string): ReturnType<Loader['opened']> {
    const known = this.texts.get(path);
    if (known !== undefined) return known;
    const text = this.loader.opened(path);
    this.texts.set(path, text);
    return text;
  }

  private unread(path: string): Snapshot {
    const tree = parse('');
    return {
      gloss: { path, display: this.host.display(path), tree },
      method: null,
      run: null,
      inputs: [],
      results: [],
      requirements: [],
      constructions: [],
      findings: [
        {
          code: 'file-missing',
          severity: 'error',
          file: 'gloss',
          span: { start: 0, end: 0 },
          message: unreadText(this.host.display(path)),
          related: [],
          fixes: [],
          allowed: null,
        },
      ],
    };
  }
}

/** In the order of the texts, the gloss before its method. */
function inPlace(findings: readonly PlacedFinding[]): PlacedFinding[] {
  return [...findings].sort((a, b) => (a.file === b.file ? a.span.start - b.span.start : a.file === 'gloss' ? -1 : 1));
}

function unreadText(path: string): string {
  return `There is no file ${path}, or it lies outside the workspace.`;
}

function methodFile(tree: Tree): { readonly id: string; readonly file: string } | null {
  if (tree.role !== 'run') return null;
  for (const node of tree.statements) {
    if (node.statement?.kind === 'use method') return { id: node.id, file: node.statement.file };
  }
  return null;
}

function readingFindings(program: Program, loaded: Loaded | null): Finding[] {
  if (loaded === null || program.run === null) return [];
  const findings: Finding[] = [];
  const add = (data: Loaded['run'], statement: string) => {
    if (data.ok) findings.push(...cellFindings(data.value, statement));
    else findings.push(readingFinding(data.failure, statement));
  };
  add(loaded.run, program.run.id);
  for (const join of loaded.joins) add(join.data, join.statement);
  for (const blank of loaded.blanks) add(blank.data, blank.statement);
  return findings;
}
