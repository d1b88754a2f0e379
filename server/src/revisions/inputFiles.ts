import type { FileSource } from '../base/source';
import type { Tree } from '../language/tree';
import type { RevisionEngine } from './revisionEngine';

/** Paths of every file that takes part in a gloss on one side: itself, its method, data, joins, blanks and what these name. */
export async function inputFiles(
  engine: RevisionEngine,
  source: FileSource,
  gloss: string,
): Promise<readonly string[]> {
  const found = new Set<string>();
  const waiting = [gloss];
  while (waiting.length > 0) {
    const path = waiting.pop()!;
    if (found.has(path)) continue;
    found.add(path);
    if (!path.endsWith('.gloss')) continue;
    const text = await engine.text(source, path);
    if (text === null) continue;
    for (const file of namedFiles(engine.engine.meaning(text, null).tree))
      waiting.push(engine.host.resolve(path, file));
  }
  return [...found].sort();
}

function namedFiles(tree: Tree): string[] {
  return tree.statements.flatMap(({ statement: s }) =>
    s !== null && 'file' in s && typeof s.file === 'string' ? [s.file] : [],
  );
}

/** True where nothing that takes part in the gloss differs between the sides: its numbers are the same, without computing. */
export async function untouched(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  gloss: string,
): Promise<boolean> {
  if ((await from.contentId(gloss)) !== (await to.contentId(gloss))) return false;
  for (const path of await inputFiles(engine, to, gloss)) {
    if ((await from.contentId(path)) !== (await to.contentId(path))) return false;
  }
  return true;
}
