import type { FileSource } from '../base/source';
import type { RevisionEngine } from './revisionEngine';

/** Names of the statements that give results, as a gloss and its method write them; known without computing. A method alone has none. */
export async function resultNames(
  engine: RevisionEngine,
  source: FileSource,
  gloss: string,
): Promise<ReadonlySet<string>> {
  const text = await engine.text(source, gloss);
  if (text === null) return new Set();
  const { tree } = engine.engine.meaning(text, null);
  if (tree.role !== 'run') return new Set();
  const used = tree.statements.map((s) => s.statement).find((s) => s?.kind === 'use method');
  const method = used === undefined || used === null ? null : engine.host.resolve(gloss, used.file);
  const { program } = engine.engine.meaning(text, method === null ? null : await engine.text(source, method));
  return new Set(program.order.flatMap(({ statement: s }) => ('name' in s && s.name !== null ? [s.name] : [])));
}

/** The statement that a result is named after: `First` of `First.loss`; a `let` has its name alone. */
export function statementOf(result: string): string {
  return result.split('.')[0];
}
