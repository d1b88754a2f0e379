import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Position } from 'vscode-languageserver-types';
import type { GlossDocument } from '../../../server/src/features/workspace';
import { LiveWorkspace } from '../../../server/src/lsp/liveWorkspace';
import { MemoryOutside, StoppedTimers } from '../../lsp/support/memoryOutside';
import { bench, marked, type Bench } from './fixture';

/** The glosses of the examples, with the files beside them as `bench` takes them. */
export interface Example {
  readonly name: string;
  readonly text: string;
  readonly files: Readonly<Record<string, string | Uint8Array>>;
}

const folders = ['limestone', 'preform', 'faults'].map((name) => join('examples', name));

/** Every gloss of the examples; `withData`: with the data files, which are read on demand. */
export function examples(withData = false): Example[] {
  return folders.flatMap((folder) => {
    const files = withData ? filesOf(folder) : {};
    return readdirSync(folder)
      .filter((name) => name.endsWith('.gloss'))
      .map((name) => ({ name, text: read(join(folder, name)), files }));
  });
}

/** One gloss of the examples opened among its files. */
export function exampleBench(folder: string, name: string, text?: string): Bench {
  const files = filesOf(join('examples', folder));
  return bench(inOneFolder(text ?? read(join('examples', folder, name))), files);
}

/** The texts of a gloss up to each seventh character, with the cursor at the end. */
export function prefixes(text: string): string[] {
  const clean = text.replaceAll('|', '');
  return Array.from({ length: Math.floor(clean.length / 7) + 1 }, (_, i) => `${clean.slice(0, 7 * i)}|`);
}

/** A text that is open and never evaluated, with its cursor: for what asks for no numbers. */
export async function still(source: string): Promise<{
  readonly workspace: LiveWorkspace;
  readonly document: GlossDocument;
  readonly cursor: Position;
}> {
  const { text, cursor } = marked(source);
  const workspace = new LiveWorkspace(new MemoryOutside({}, new StoppedTimers()), {
    started: () => undefined,
    finished: () => undefined,
    ended: () => undefined,
    closed: () => undefined,
    fault: (what, error) => {
      throw new Error(what, { cause: error });
    },
  });
  const uri = 'file:///lab/a.gloss';
  workspace.open(uri, 1, text);
  return { workspace, document: (await workspace.document(uri))!, cursor };
}

/** The faults name files in folders beside theirs; a bench has one folder, and those below it. */
function inOneFolder(text: string): string {
  return text.replaceAll('"../', '"');
}

/** Files of a folder, and for the faults those they name. */
function filesOf(folder: string): Record<string, string | Uint8Array> {
  const own = readdirSync(folder).map((name) => [name, readFileSync(join(folder, name))] as const);
  const beside = folder.endsWith('faults') ? ['limestone', 'preform'] : [];
  const others = beside.flatMap((name) =>
    readdirSync(join('examples', name)).map((f) => [`${name}/${f}`, readFileSync(join('examples', name, f))] as const),
  );
  return Object.fromEntries([...own, ...others]);
}

function read(path: string): string {
  return readFileSync(path, 'utf8');
}
