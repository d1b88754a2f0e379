import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { globSync } from 'tinyglobby';

/** Which entry of the manifest the editor is to start: that for Node, or that for a browser's worker. */
export type Entry = 'main' | 'browser';

interface Manifest {
  readonly name: string;
  readonly publisher: string;
  readonly version: string;
  /** Patterns of what the package holds. */
  readonly files: readonly string[];
  main?: string;
  browser?: string;
}

/** The manifest of the checkout that this process runs in. */
export function manifest(): Manifest {
  return JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;
}

/** What the extension's package holds, by the manifest; paths with `/`, sorted. */
export function packagedFiles(): string[] {
  return globSync([...manifest().files, 'package.json'], { expandDirectories: false }).sort();
}

/** Copies the extension to a folder as its package holds it, with one of its two entries alone in the manifest. */
export function copyExtension(folder: string, entry: Entry): void {
  for (const name of packagedFiles()) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    cpSync(name, join(folder, name));
  }
  const alone = manifest();
  if (entry === 'browser') delete alone.main;
  else delete alone.browser;
  writeFileSync(join(folder, 'package.json'), JSON.stringify(alone, null, 2));
}
