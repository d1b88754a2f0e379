import type { FileSource } from '../base/source';
import type { RevisionEngine } from './revisionEngine';

/** Names that a gloss and its method write. */
export interface WrittenNames {
  /** Of the statements that give results. */
  readonly results: ReadonlySet<string>;
  /** Of requirements, each with what it asks. */
  readonly requirements: ReadonlyMap<string, string>;
}

/** Known without computing. A method alone has none, nor has a gloss that is not there. */
export async function writtenNames(engine: RevisionEngine, source: FileSource, gloss: string): Promise<WrittenNames> {
  const none = { results: new Set<string>(), requirements: new Map<string, string>() };
  const text = await engine.text(source, gloss);
  if (text === null) return none;
  const { tree } = engine.engine.meaning(text, null);
  if (tree.role !== 'run') return none;
  const used = tree.statements.map((s) => s.statement).find((s) => s?.kind === 'use method');
  const method = used === undefined || used === null ? null : engine.host.resolve(gloss, used.file);
  const { program } = engine.engine.meaning(text, method === null ? null : await engine.text(source, method));
  return {
    results: new Set(program.order.flatMap(({ statement: s }) => ('name' in s && s.name !== null ? [s.name] : []))),
    requirements: new Map(
      program.requires.flatMap(({ statement: s }) => (s.name === null ? [] : [[s.name, s.text] as const])),
    ),
  };
}

/** The statement that a result is named after: `First` of `First.loss`; a `let` has its name alone. */
export function statementOf(result: string): string {
  return result.split('.')[0];
}
