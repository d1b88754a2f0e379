import type { FileSource } from '../base/source';
import type { Tree } from '../language/tree';
import type { RevisionEngine } from './revisionEngine';

/** Paths of every file that takes part in a gloss on one side: itself, its method, data, joins, blanks and what these name. */
async function inputFiles(engine: RevisionEngine, source: FileSource, gloss: string): Promise<Inputs> {
  let unread: string | null = null;
  const found = new Set<string>();
  const waiting = [gloss];
  while (waiting.length > 0) {
    const path = waiting.pop()!;
    if (found.has(path)) continue;
    found.add(path);
    if (!path.endsWith('.gloss')) continue;
    const text = await engine.text(source, path);
    if (text === null) {
      unread ??= await engine.unread(source, path);
      continue;
    }
    for (const file of namedFiles(engine.engine.meaning(text, null).tree))
      waiting.push(engine.host.resolve(path, file));
  }
  return { inputs: [...found].sort(), unread };
}

interface Inputs {
  readonly inputs: readonly string[];
  /** Why a text among them, and with it what it names, is not known; null: all are. */
  readonly unread: string | null;
}

function namedFiles(tree: Tree): string[] {
  return tree.statements.flatMap(({ statement: s }) =>
    s !== null && 'file' in s && typeof s.file === 'string' ? [s.file] : [],
  );
}

/** What takes part in a gloss on one side, and a key that is the same only where the same files of the same content do. */
export async function inputsOf(
  engine: RevisionEngine,
  source: FileSource,
  gloss: string,
): Promise<Inputs & { readonly key: string }> {
  const { inputs, unread } = await inputFiles(engine, source, gloss);
  const ids: string[] = [gloss];
  for (const input of inputs) ids.push(`${input}\n${(await source.contentId(input)) ?? 'none'}`);
  return { inputs, unread, key: ids.join('\n') };
}
