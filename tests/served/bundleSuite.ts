import { build } from 'esbuild';
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Entry } from './extensionFolder';

const folder = join('tests', 'editor');

/** Files of the suite that run in the extension host. With the browser's entry those whose name begins with `smoke`. */
export function suiteFiles(entry: Entry): string[] {
  const names = readdirSync(folder).filter((name) => name.endsWith('.test.ts'));
  return names.filter((name) => entry === 'main' || name.startsWith('smoke')).sort();
}

/** Bundles the suite into one file with a `run` function, as an extension host loads it: mocha is in it. */
export async function bundleSuite(file: string, entry: Entry, only: string | null): Promise<void> {
  const files = suiteFiles(entry).filter((name) => only === null || name.includes(only));
  // Named as the report names files of tests.
  const listed = files.map((name) => {
    const built = `out/tests/editor/${name.replace(/\.ts$/, '.js')}`;
    return `[${JSON.stringify(built)}, () => require('./${name.replace(/\.ts$/, '')}')]`;
  });
  const contents = `const { runSuite } = require('./support/run');\nexports.run = () => runSuite([${listed.join(',')}]);`;
  await build({
    stdin: { contents, resolveDir: resolve(folder), sourcefile: 'suite.js' },
    bundle: true,
    format: 'cjs',
    platform: entry === 'main' ? 'node' : 'browser',
    target: 'node20',
    external: ['vscode'],
    sourcemap: 'inline',
    ...(entry === 'browser' ? { alias: { 'node:assert/strict': `./${folder}/support/assertInWorker.ts` } } : {}),
    outfile: file,
    logLevel: 'warning',
  });
}
