import type { FileSource } from '../base/source';
import type { DiffModel, GlossDiff } from '../presentation/diff/model';
import { compareGloss, type CompareOptions } from './compare';
import { inputsOf } from './inputFiles';
import { movedGlosses, type GlossPaths } from './movedGlosses';
import type { RevisionEngine } from './revisionEngine';

/**
 * The glosses of both sides, by path; a gloss that moved to another path is compared with where it was. `renames`: new path →
 * old path, as far as the repository knows.
 */
export async function compareAll(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  glosses: GlossPaths & { readonly renames?: ReadonlyMap<string, string> },
  options: CompareOptions,
  tell: (done: number, of: number, path: string) => void = () => undefined,
): Promise<DiffModel> {
  const was = await movedGlosses(engine, from, to, glosses, glosses.renames);
  const gone = glosses.old.filter((p) => !glosses.new.includes(p) && ![...was.values()].includes(p));
  const paths = [...glosses.new, ...gone].sort();
  const diffs: GlossDiff[] = [];
  for (const [index, path] of paths.entries()) {
    tell(index + 1, paths.length, path);
    const diff = await oneOfAll(engine, from, to, path, was.get(path), options);
    if (diff !== null) diffs.push(diff);
  }
  return { from: from.label, to: to.label, glosses: diffs };
}

/** Compared once for the same content of both sides; what nothing touched is not computed at all. null: nothing to show. */
async function oneOfAll(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  path: string,
  was: string | undefined,
  options: CompareOptions,
): Promise<GlossDiff | null> {
  const older = (await inputsOf(engine, from, was ?? path)).key;
  const newer = (await inputsOf(engine, to, path)).key;
  if (older === newer) return (await isEvaluation(engine, to, path)) ? still(engine, path) : null;
  const { fraction, relativeFloor, floors } = options.tolerance;
  const key = JSON.stringify([older, newer, fraction, relativeFloor, [...floors], options.causes]);
  const known = engine.compared.get(key) as GlossDiff | undefined;
  const diff = known ?? (await compareGloss(engine, from, to, path, options, was === undefined ? {} : { was }));
  if (diff === null || !hasNumbers(diff)) return null;
  // A content that could not be had may be fetched later.
  if (diff.trouble === null) engine.compared.set(key, diff);
  return diff;
}

function still(engine: RevisionEngine, path: string): GlossDiff {
  return {
    gloss: engine.host.display(path),
    was: null,
    status: 'both',
    rows: [],
    verdicts: [],
    changes: [],
    program: null,
    trouble: null,
  };
}

/** Whether a gloss that nothing touched has numbers: known from its text, for it is not evaluated. */
async function isEvaluation(engine: RevisionEngine, source: FileSource, path: string): Promise<boolean> {
  const text = await engine.text(source, path);
  if (text === null) return false;
  const { tree } = engine.engine.meaning(text, null);
  return tree.role === 'run' && tree.statements.some(({ statement: s }) => s !== null && numbered.has(s.kind));
}

const numbered = new Set<string>([
  'use method',
  'step',
  'peak',
  'glass',
  'onset',
  'crossing',
  'residue',
  'let',
  'require',
]);

/** A method or the gloss of a blank has no numbers of its own: it shows in the glosses that use it. */
function hasNumbers(diff: GlossDiff): boolean {
  return diff.rows.length > 0 || diff.verdicts.length > 0 || diff.trouble !== null;
}
