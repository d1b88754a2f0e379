import type { FileSource } from '../base/source';
import type { DiffModel, GlossDiff } from '../presentation/diff/model';
import { compareGloss, type CompareOptions } from './compare';
import { untouched } from './inputFiles';
import { movedGlosses, type GlossPaths } from './movedGlosses';
import type { RevisionEngine } from './revisionEngine';

/** The glosses of both sides, by path; a gloss that moved to another path is compared with where it was. */
export async function compareAll(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  glosses: GlossPaths,
  options: CompareOptions,
  tell: (done: number, of: number, path: string) => void = () => undefined,
): Promise<DiffModel> {
  const was = await movedGlosses(engine, from, to, glosses);
  const gone = glosses.old.filter((p) => !glosses.new.includes(p) && ![...was.values()].includes(p));
  const paths = [...glosses.new, ...gone].sort();
  const diffs: GlossDiff[] = [];
  for (const [index, path] of paths.entries()) {
    tell(index + 1, paths.length, path);
    const old = was.get(path);
    if (old === undefined && (await untouched(engine, from, to, path))) {
      if (await isEvaluation(engine, to, path)) diffs.push(still(engine, path));
      continue;
    }
    const diff = await compareGloss(engine, from, to, path, options, old === undefined ? {} : { was: old });
    if (diff !== null && hasNumbers(diff)) diffs.push(diff);
  }
  return { from: from.label, to: to.label, glosses: diffs };
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
