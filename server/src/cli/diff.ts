import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { StillSource, type FileSource } from '../base/source';
import { Repository } from '../host/repository';
import { withSlashes } from '../host/root';
import { SourceHost } from '../host/sourceHost';
import { WorkSource } from '../host/workSource';
import { comparedOf, type ComparedGloss } from '../presentation/diff/compared';
import { diffHtml } from '../presentation/diff/diffHtml';
import { diffJson } from '../presentation/diff/diffJson';
import { diffMarkdown } from '../presentation/diff/diffMarkdown';
import { diffText } from '../presentation/diff/diffText';
import type { DiffModel } from '../presentation/diff/model';
import { savedResults } from '../presentation/diff/saved';
import { modelMoved } from '../presentation/diff/shownRows';
import { defaultTolerance, type Tolerance } from '../presentation/diff/tolerance';
import { unpainted } from '../presentation/paint';
import { compareNumbers } from '../presentation/diff/compareNumbers';
import { compareAll } from '../revisions/compareAll';
import { RevisionEngine } from '../revisions/revisionEngine';
import { paintFor } from './colour';
import type { Context } from './context';
import { indexWord, wantedOf, type Wanted } from './diffArguments';
import { evaluatePaths, writeResults } from './evaluateAll';
import { BadUsage, done, found, Trouble } from './exitCodes';
import { expandInputs, glosses } from './inputs';
import { Progress } from './progress';

/** `thermogloss diff`: which results moved from one revision to another and what moved them; 1 where one moved. */
export async function diff(context: Context): Promise<number> {
  const { typed, terminal } = context;
  const repository = await Repository.open(terminal.cwd);
  const before = typed.operands.slice(0, typed.operands.length - (typed.after?.length ?? 0));
  const wanted = await wantedOf(before, typed.after, repository, terminal.cwd);
  const tolerance = toleranceOf(typed.values.get('tolerance'));
  const model =
    wanted.kind === 'files'
      ? await compareFiles(context, wanted, tolerance)
      : await compareRevisions(context, wanted, repository!, tolerance);
  writeResults(context, shown(context, model));
  return modelMoved(model) ? found : done;
}

function shown({ typed, terminal }: Context, model: DiffModel): string {
  const options = { all: typed.switches.has('all'), within: typed.switches.has('within') };
  switch (typed.values.get('format')) {
    case 'json':
      return `${JSON.stringify(diffJson(model))}\n`;
    case 'markdown':
      return diffMarkdown(model, options);
    case 'html':
      return diffHtml(model, options);
    default:
      return diffText(
        model,
        options,
        typed.values.has('output') ? unpainted : paintFor(terminal, terminal.outIsTerminal),
      );
  }
}

/** `loss=0.02,First.start=0.5`: floors in the shown unit; a bare number is the fraction of the combined uncertainty. */
export function toleranceOf(text: string | undefined): Tolerance {
  if (text === undefined) return defaultTolerance;
  let { fraction } = defaultTolerance;
  const floors = new Map<string, number>();
  for (const part of text.split(',')) {
    const [left, right, ...more] = part.split('=');
    const written = (right ?? left).trim();
    const value = Number(written);
    if (!(value >= 0 && value < Infinity) || written === '' || left.trim() === '' || more.length > 0) {
      throw new BadUsage(`--tolerance ${part}: write NAME=NUMBER, or the fraction of the combined uncertainty alone`);
    }
    if (right === undefined) fraction = value;
    else floors.set(left.trim(), value);
  }
  return { ...defaultTolerance, fraction, floors };
}

async function compareRevisions(
  context: Context,
  wanted: Extract<Wanted, { kind: 'revisions' }>,
  repository: Repository,
  tolerance: Tolerance,
): Promise<DiffModel> {
  const { typed, terminal } = context;
  const work = new StillSource(new WorkSource(repository.top));
  const sourceOf = async (name: string | null): Promise<{ source: FileSource; commit: string | null }> => {
    if (name === null) return { source: work, commit: await repository.commit('HEAD') };
    if (name === indexWord) return { source: await repository.source('index', 'index'), commit: null };
    const commit = await repository.commit(name);
    if (commit === null) throw new Trouble(`${name} names no revision of this repository`);
    return { source: await repository.source(commit, name), commit };
  };
  const to = await sourceOf(wanted.to);
  let from = await sourceOf(wanted.from);
  if (typed.switches.has('merge-base')) {
    if (from.commit === null || to.commit === null) throw new BadUsage('--merge-base needs two revisions');
    const base = await repository.mergeBase(from.commit, to.commit);
    if (base === null) throw new Trouble(`${wanted.from} has no commit in common with ${wanted.to ?? 'HEAD'}`);
    const label = `merge base of ${wanted.from} and ${wanted.to ?? 'HEAD'}`;
    from = { source: await repository.source(base, label), commit: base };
  }
  const host = new SourceHost(repository.top, from.source);
  const engine = new RevisionEngine(host);
  const listed = await glossesOf(context, wanted.paths, repository);
  const present = async (source: FileSource): Promise<string[]> => {
    const there: string[] = [];
    for (const path of listed) if ((await source.contentId(path)) !== null) there.push(path);
    return there;
  };
  const progress = new Progress(terminal);
  try {
    return await compareAll(
      engine,
      from.source,
      to.source,
      { old: await present(from.source), new: await present(to.source), renames: await renames() },
      { tolerance, bytes: (text) => Buffer.from(text, 'utf8'), causes: true },
      (n, of, path) => progress.now(`${n} of ${of}: ${host.display(path)}`),
    );
  } finally {
    progress.end();
    repository.rest();
  }

  /** Git knows them between commits and to the index; of the working copy it knows no file that is not added. */
  async function renames(): Promise<ReadonlyMap<string, string>> {
    const { top } = repository;
    const other = wanted.to === null ? null : (to.commit ?? 'index');
    if (from.commit === null || other === null) return new Map();
    const found = await repository.renames(from.commit, other);
    return new Map([...found].map(([path, was]) => [`${top}/${path}`, `${top}/${was}`]));
  }

  /** Glosses of every side: what is gone from the folder is found in the trees. */
  async function glossesOf({ terminal }: Context, paths: readonly string[], of: Repository): Promise<string[]> {
    const all = new Set<string>();
    for (const tree of await Promise.all([from, to].map((s) => treeOf(s.commit, of)))) {
      for (const name of tree.keys()) if (name.endsWith('.gloss')) all.add(`${of.top}/${name}`);
    }
    const index = await of.tree('index');
    for (const name of index.keys()) if (name.endsWith('.gloss')) all.add(`${of.top}/${name}`);
    const asked = paths.length === 0 ? [terminal.cwd] : paths.map((p) => withSlashes(resolve(terminal.cwd, p)));
    const found = await expandInputs(paths.length === 0 ? ['.'] : paths, terminal.cwd, glosses).catch(
      (): string[] => [],
    );
    const here = found.map(withSlashes);
    for (const path of here) all.add(path);
    const inside = (path: string): boolean =>
      here.includes(path) || asked.some((a) => path === withSlashes(a) || path.startsWith(`${withSlashes(a)}/`));
    const chosen = [...all].filter(inside).sort();
    if (chosen.length === 0) throw new Trouble(`no gloss matches ${paths.length === 0 ? 'here' : paths.join(' ')}`);
    return chosen;
  }
}

function treeOf(commit: string | null, repository: Repository): Promise<ReadonlyMap<string, string>> {
  return commit === null ? Promise.resolve(new Map()) : repository.tree(commit);
}

/** Two glosses, two folders by relative path, or saved results: no repository is needed, and no cause is looked for. */
async function compareFiles(
  context: Context,
  wanted: Extract<Wanted, { kind: 'files' }>,
  tolerance: Tolerance,
): Promise<DiffModel> {
  const older = await numbersOf(context, wanted.from);
  const newer = await numbersOf(context, wanted.to);
  const single = older.size === 1 && newer.size === 1;
  const keys = single ? [...newer.keys()] : [...new Set([...older.keys(), ...newer.keys()])].sort();
  const diffs = keys.map((key) => {
    const from = single ? [...older.values()][0] : older.get(key);
    const to = newer.get(key);
    const only = (to ?? from)!;
    const nothing: ComparedGloss = { ...only, results: [], requirements: [], failure: null };
    const diff = compareNumbers(from ?? nothing, to ?? nothing, tolerance);
    const status =
      from === undefined ? ('added' as const) : to === undefined ? ('removed' as const) : ('both' as const);
    return { ...diff, status };
  });
  return { from: wanted.from, to: wanted.to, glosses: diffs };
}

/** By path relative to the folder named, or as the saved file names them. */
async function numbersOf(context: Context, operand: string): Promise<Map<string, ComparedGloss>> {
  const at = resolve(context.terminal.cwd, operand);
  if (at.endsWith('.json')) {
    const saved = savedResults(readFileSync(at, 'utf8'));
    if ('problem' in saved) throw new Trouble(`${operand} is no saved results file: ${saved.problem}`);
    return new Map(saved.map((s) => [s.gloss, s]));
  }
  const snapshots = await evaluatePaths(context, [operand], 'diff');
  const withNumbers = snapshots.filter((s) => s.results.length > 0 || s.requirements.length > 0);
  return new Map(withNumbers.map((s) => [withSlashes(relative(at, s.gloss.path)) || s.gloss.display, comparedOf(s)]));
}
