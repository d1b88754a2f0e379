import type { FileSource } from '../base/source';
import type { Snapshot } from '../engine/snapshot';
import type { Program } from '../language/program';
import { comparedOf, type ComparedGloss } from '../presentation/diff/compared';
import type { RevisionEngine } from './revisionEngine';

/** One gloss on one side, evaluated. */
export interface Side {
  readonly source: FileSource;
  /** Absolute path of the gloss on this side. */
  readonly path: string;
  readonly snapshot: Snapshot;
  readonly program: Program;
  readonly compared: ComparedGloss;
}

/** null: the gloss is not there on this side. */
export async function sideOf(
  engine: RevisionEngine,
  source: FileSource,
  path: string,
  text?: string,
): Promise<Side | null> {
  if (text === undefined && (await source.contentId(path)) === null) return null;
  const snapshot = await engine.evaluate(source, path, text);
  const { program } = engine.engine.meaning(
    snapshot.gloss.tree.text,
    snapshot.method === null ? null : snapshot.method.tree.text,
  );
  return { source, path, snapshot, program, compared: comparedOf(snapshot) };
}

/** Names that a statement depends on, itself among them. */
export function dependencies(program: Program, name: string): ReadonlySet<string> {
  const needs = new Map(program.order.map((e) => ['name' in e.statement ? e.statement.name : '', e.needs]));
  const found = new Set<string>();
  const waiting = [name];
  while (waiting.length > 0) {
    const next = waiting.pop()!;
    if (found.has(next)) continue;
    found.add(next);
    waiting.push(...(needs.get(next) ?? []));
  }
  return found;
}
