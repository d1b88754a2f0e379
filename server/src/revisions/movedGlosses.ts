import type { FileSource } from '../base/source';
import type { RevisionEngine } from './revisionEngine';

/** Paths of glosses on both sides. */
export interface GlossPaths {
  readonly old: readonly string[];
  readonly new: readonly string[];
}

/**
 * New path → old path, for glosses that went at one path and came at another: the same text, or another text on the same
 * measured run (same content of the data file it names). One run evaluated by two glosses tells nothing.
 */
export async function movedGlosses(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  glosses: GlossPaths,
): Promise<Map<string, string>> {
  const gone = glosses.old.filter((p) => !glosses.new.includes(p));
  const come = glosses.new.filter((p) => !glosses.old.includes(p));
  const found = new Map<string, string>();
  if (gone.length === 0 || come.length === 0) return found;
  await pair(gone, come, found, (source, path) => source.contentId(path));
  await pair(gone, come, found, (source, path) => runId(engine, source, path));
  return found;

  async function pair(
    left: readonly string[],
    right: readonly string[],
    into: Map<string, string>,
    identity: (source: FileSource, path: string) => Promise<string | null>,
  ): Promise<void> {
    const taken = new Set(into.values());
    const olds = await byIdentity(
      left.filter((p) => !taken.has(p)),
      (p) => identity(from, p),
    );
    const news = await byIdentity(
      right.filter((p) => !into.has(p)),
      (p) => identity(to, p),
    );
    for (const [id, paths] of news) {
      const was = olds.get(id) ?? [];
      if (paths.length === 1 && was.length === 1) into.set(paths[0], was[0]);
    }
  }
}

async function byIdentity(
  paths: readonly string[],
  identity: (path: string) => Promise<string | null>,
): Promise<Map<string, string[]>> {
  const found = new Map<string, string[]>();
  for (const path of paths) {
    const id = await identity(path);
    if (id !== null) found.set(id, [...(found.get(id) ?? []), path]);
  }
  return found;
}

/** Content of the data file that a run gloss names; null: it names none, or it is not there. */
async function runId(engine: RevisionEngine, source: FileSource, path: string): Promise<string | null> {
  const text = await engine.text(source, path);
  if (text === null) return null;
  const run = engine.engine.meaning(text, null).tree.statements.find((s) => s.statement?.kind === 'run')?.statement;
  return run?.kind === 'run' ? source.contentId(engine.host.resolve(path, run.file)) : null;
}
