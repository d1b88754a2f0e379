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
  /** Why the text of the gloss or of its method cannot be read though it is there; null: it can. */
  readonly unread: string | null;
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
  const compared = comparedOf(snapshot);
  const unread = text === undefined ? await unreadText(engine, source, path, snapshot) : null;
  const failure = compared.results.length === 0 ? (unread ?? compared.failure) : compared.failure;
  return { source, path, snapshot, program, unread, compared: { ...compared, failure } };
}

async function unreadText(
  engine: RevisionEngine,
  source: FileSource,
  path: string,
  { gloss, method }: Snapshot,
): Promise<string | null> {
  if (gloss.tree.statements.length === 0) return engine.unread(source, path);
  const used = gloss.tree.statements.map((s) => s.statement).find((s) => s?.kind === 'use method');
  if (used === undefined || used === null || method !== null) return null;
  return engine.unread(source, engine.host.resolve(path, used.file));
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
