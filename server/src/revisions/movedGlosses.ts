import type { FileSource } from '../base/source';
import type { RevisionEngine } from './revisionEngine';

/** Paths of glosses on both sides. */
export interface GlossPaths {
  readonly old: readonly string[];
  readonly new: readonly string[];
}

/**
 * New path → old path of glosses that moved, also where they were edited on the way. First those of the same content; then, of
 * those that came and those that went, the pairs of glosses that evaluate the same run, and of methods that git takes for
 * renamed (`renames`) or that have at least half of their lines in common, the likest first. Glosses of different runs are no
 * pair however alike they are, and of two that are equally like a third neither is.
 */
export async function movedGlosses(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  glosses: GlossPaths,
  renames: ReadonlyMap<string, string> = new Map(),
): Promise<Map<string, string>> {
  const gone = new Set(glosses.old.filter((p) => !glosses.new.includes(p)));
  const came = new Set(glosses.new.filter((p) => !glosses.old.includes(p)));
  const found = new Map<string, string>();
  const pair = (path: string, was: string): void => {
    found.set(path, was);
    gone.delete(was);
    came.delete(path);
  };
  for (const path of [...came]) {
    const id = await to.contentId(path);
    for (const was of gone) {
      if (id === null || (await from.contentId(was)) !== id) continue;
      pair(path, was);
      break;
    }
  }
  const left = await Promise.all([...gone].map((path) => textOf(engine, from, path)));
  const candidates: { readonly path: string; readonly was: string; readonly weight: number }[] = [];
  for (const path of came) {
    const new_ = await textOf(engine, to, path);
    for (const old of left) {
      const sameRun = isSameRun(old, new_);
      if (!sameRun && (old.run !== null || new_.run !== null)) continue;
      const alike = common(old.lines, new_.lines);
      const isRename = renames.get(path) === old.path;
      if (!isRename && !sameRun && alike < 0.5) continue;
      candidates.push({ path, was: old.path, weight: alike + (sameRun ? 1 : 0) + (isRename ? 1 : 0) });
    }
  }
  candidates.sort((a, b) => b.weight - a.weight || (`${a.path}\n${a.was}` < `${b.path}\n${b.was}` ? -1 : 1));
  for (const { path, was, weight } of candidates) {
    if (!came.has(path) || !gone.has(was)) continue;
    const isOpen = candidates.some(
      (c) => c.weight === weight && (c.path === path) !== (c.was === was) && came.has(c.path) && gone.has(c.was),
    );
    if (!isOpen) pair(path, was);
  }
  return found;
}

interface GlossLines {
  readonly path: string;
  readonly lines: readonly string[];
  /** Path and content of the run it evaluates; null: a method, or no run named. */
  readonly run: { readonly path: string; readonly id: string | null } | null;
}

async function textOf(engine: RevisionEngine, source: FileSource, path: string): Promise<GlossLines> {
  const text = (await engine.text(source, path)) ?? '';
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const { program } = engine.engine.meaning(text, null);
  const run = program.run === null ? null : engine.host.resolve(path, program.run.statement.file);
  return {
    path,
    lines: lines.filter((line) => line !== ''),
    run: run === null ? null : { path: run, id: await source.contentId(run) },
  };
}

function isSameRun(a: GlossLines, b: GlossLines): boolean {
  if (a.run === null || b.run === null) return false;
  return a.run.path === b.run.path || (a.run.id !== null && a.run.id === b.run.id);
}

/** Lines that both have, of those of the longer one. */
function common(a: readonly string[], b: readonly string[]): number {
  const free = new Map<string, number>();
  for (const line of a) free.set(line, (free.get(line) ?? 0) + 1);
  let both = 0;
  for (const line of b) {
    const count = free.get(line) ?? 0;
    if (count === 0) continue;
    both++;
    free.set(line, count - 1);
  }
  return both / Math.max(a.length, b.length, 1);
}
