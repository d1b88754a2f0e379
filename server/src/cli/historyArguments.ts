import { existsSync, statSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import type { FileSource } from '../base/source';
import { realPath, withSlashes } from '../host/root';
import { nearest } from '../language/nearest';
import { statementOf, writtenNames, type WrittenNames } from '../revisions/names';
import type { RevisionEngine } from '../revisions/revisionEngine';
import type { Context } from './context';
import { BadUsage, Trouble } from './exitCodes';
import { expandInputs, glosses } from './inputs';

/** What `history` was asked for. */
export interface HistoryWish {
  readonly name: string;
  /** As typed; null: the only gloss here that has such a result. */
  readonly gloss: string | null;
  readonly since: string | null;
  readonly limit: number;
}

export function historyWish({ typed }: Context): HistoryWish {
  const [name, gloss, ...more] = typed.operands;
  if (name === undefined) throw new BadUsage('history needs the name of a result, as First.loss');
  if (more.length > 0) throw new BadUsage(`history follows one result of one gloss; ${more[0]} is one word too many`);
  const written = typed.values.get('limit');
  const limit = written === undefined ? Infinity : Number(written);
  if (written !== undefined && !/^[1-9]\d*$/.test(written)) {
    throw new BadUsage(`--limit ${written}: write a whole number of at least 1`);
  }
  return { name, gloss: gloss ?? null, since: typed.values.get('since') ?? null, limit };
}

/** Absolute path of the gloss, which need not be there any more. */
export async function wantedGloss(
  wish: HistoryWish,
  cwd: string,
  engine: RevisionEngine,
  work: FileSource,
): Promise<string> {
  if (wish.gloss !== null) {
    const at = resolve(cwd, wish.gloss);
    if (existsSync(at) && statSync(at).isDirectory()) throw new BadUsage(`${wish.gloss} is a folder; name one gloss`);
    if (!wish.gloss.endsWith('.gloss')) throw new BadUsage(`${wish.gloss} is no gloss`);
    return withSlashes(realPath(at));
  }
  const here = await expandInputs(['.'], cwd, glosses).catch((): string[] => []);
  const names = new Map<string, WrittenNames>();
  for (const path of here) names.set(path, await writtenNames(engine, work, withSlashes(realPath(path))));
  const having = here.filter((path) => names.get(path)!.results.has(statementOf(wish.name)));
  if (having.length === 1) return withSlashes(realPath(having[0]));
  const shown = (path: string): string => withSlashes(relative(cwd, path));
  if (having.length > 1) {
    const some = having.slice(0, 5).map(shown);
    const rest = having.length > some.length ? ` and ${having.length - some.length} more` : '';
    throw new BadUsage(`several glosses have ${statementOf(wish.name)}: ${some.join(', ')}${rest}; name one`);
  }
  if (here.length === 0) throw new Trouble('there is no gloss below this folder; name one');
  throw new BadUsage(`no gloss here has a result ${wish.name}${hint(wish.name, [...names.values()])}`);
}

/** What a name that is no result's may stand for, as the end of a message. */
export function hint(name: string, of: readonly WrittenNames[]): string {
  const asks = of.map((names) => names.requirements.get(name)).find((text) => text !== undefined);
  if (asks !== undefined) return `; ${name} is a requirement (${asks}), and what is followed is a result it asks of`;
  return meant(statementOf(name), new Set(of.flatMap((names) => [...names.results])));
}

/** Names that a misspelt one may stand for, as the end of a message. */
export function meant(name: string, known: Iterable<string>): string {
  const all = [...known];
  const inside = all.filter((id) => id.startsWith(`${name}.`));
  if (inside.length > 0) return `; it has ${listed(inside)}`;
  const near = nearest(name, all, 3);
  if (near.length > 0) return `; did you mean ${listed(near, 'or')}?`;
  // The quantity alone is misspelt beyond that: what its statement has.
  const siblings = all.filter((id) => statementOf(id) === statementOf(name));
  return siblings.length > 0 ? `; ${statementOf(name)} has ${listed(siblings)}` : '';
}

function listed(names: readonly string[], word = 'and'): string {
  const some = names.length > 8 ? [...names.slice(0, 8), `${names.length - 8} more`] : names;
  return some.length === 1 ? some[0] : `${some.slice(0, -1).join(', ')} ${word} ${some.at(-1)}`;
}
