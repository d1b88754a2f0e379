// Two products: every file transpiled one to one below out/ (what the tests load), and the bundled command line in dist/.
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';

function sources(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sources(path);
    return path.endsWith('.ts') && !path.endsWith('.d.ts') ? [path] : [];
  });
}

// A test whose source is gone must not run again from an old build.
function prune(folder, wanted) {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) prune(path, wanted);
    else if (path.endsWith('.js') && !wanted.has(path)) rmSync(path);
  }
}

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
const common = {
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  define: { PROGRAM_VERSION: JSON.stringify(version) },
};
const files = [
  ...sources('server/src'),
  ...sources('client/src'),
  ...sources('webview/src'),
  ...sources('tests'),
  ...sources('examples'),
];
prune('out', new Set(files.map((f) => join('out', f.replace(/\.ts$/, '.js')))));
await build({
  ...common,
  // Unbundled, `import()` must find files without an extension, as `require` does.
  supported: { 'dynamic-import': false },
  entryPoints: files,
  outdir: 'out',
  outbase: '.',
  sourcemap: 'inline',
  logLevel: 'warning',
});

// The reference pages of the findings are generated from their records into the package.
const { findingPages } = createRequire(import.meta.url)('../out/server/src/findings/page.js');
rmSync('dist/docs', { recursive: true, force: true, maxRetries: 5 });
mkdirSync('dist/docs', { recursive: true });
for (const [name, text] of findingPages()) writeFileSync(join('dist/docs', name), text);
// And the reference of the language from the vocabulary that its parser reads.
const { generateReference } = createRequire(import.meta.url)('../out/server/src/language/vocabulary/reference.js');
writeFileSync('dist/docs/language.md', generateReference());

// The schemas of the machine formats go with the program.
for (const name of ['results', 'findings', 'diff', 'history', 'approval'].map((n) => `${n}.schema.json`)) {
  copyFileSync(join('server/src/presentation', name), join('dist', name));
}

// The editor client: one entry for its host in Node, one for its host in a browser's worker.
for (const [name, source, platform] of [
  ['client', 'client/src/extension.ts', 'node'],
  ['clientBrowser', 'client/src/browserExtension.ts', 'browser'],
]) {
  if (!existsSync(source)) continue;
  await build({
    ...common,
    platform,
    entryPoints: { [name]: source },
    bundle: true,
    minify: true,
    external: ['vscode'],
    outdir: 'dist',
    logLevel: 'warning',
  });
}

// The curves view: one script and one style sheet for the page that the client opens.
await build({
  entryPoints: [
    { in: 'webview/src/main.ts', out: 'webview' },
    { in: 'webview/src/style/main.css', out: 'webview' },
  ],
  bundle: true,
  minify: true,
  platform: 'browser',
  format: 'iife',
  target: ['es2022', 'chrome114', 'safari16', 'firefox115'],
  outdir: 'dist',
  logLevel: 'warning',
});

if (existsSync('server/src/cli/main.ts')) {
  await build({
    ...common,
    entryPoints: { program: 'server/src/cli/main.ts', delimitedText: 'server/src/host/delimitedText.ts' },
    bundle: true,
    minify: true,
    // A bundled module may ask where it stands: in this file.
    define: { ...common.define, 'import.meta.url': '__filename' },
    outdir: 'dist',
    // csv-parse is needed only when a file leaves the regular path: its own file, asked for by name at run time.
    logLevel: 'warning',
  });
  // Only regular expressions still hold other characters; without them V8 keeps the text at one byte a character.
  const ascii = readFileSync('dist/program.js', 'utf8').replace(
    /[\u0080-\uffff]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  writeFileSync('dist/program.js', ascii);
  copyFileSync('.build/launcher.js', 'dist/thermogloss.js');
  // The cache holds what an evaluation of the example compiles.
  rmSync('dist/program.cache', { force: true });
  const cache = join('dist', 'program.cache');
  const example = ['results', 'examples/limestone/vq217-1.gloss', 'examples/preform/pet-07.gloss', '--explain'];
  spawnSync(process.execPath, ['dist/thermogloss.js', ...example], {
    stdio: 'ignore',
    env: { ...process.env, THERMOGLOSS_BUILD_CACHE: cache },
  });
}

// The language server: asked for by `thermogloss lsp` and by the editor's client.
await build({
  ...common,
  entryPoints: { server: 'server/src/lsp/nodeMain.ts' },
  bundle: true,
  minify: true,
  define: { ...common.define, 'import.meta.url': '__filename' },
  outdir: 'dist',
  logLevel: 'warning',
});

// An editor looks for the words of the manifest beside it.
copyFileSync('client/package.nls.json', 'package.nls.json');

// The same server for a Worker: Node's hash, Buffer and loading by name have stand-ins there.
const standIns = {
  'node:crypto': '.build/worker/crypto.js',
  'node:buffer': '.build/worker/buffer.js',
  'csv-parse/sync': 'node_modules/csv-parse/dist/esm/sync.js',
};
await build({
  ...common,
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
  entryPoints: { serverWorker: 'server/src/lsp/workerMain.ts' },
  bundle: true,
  minify: true,
  outdir: 'dist',
  inject: ['.build/worker/buffer.js'],
  plugins: [
    {
      name: 'stand-ins',
      setup(of) {
        of.onResolve({ filter: /^(node:(crypto|buffer)|csv-parse\/sync)$/ }, ({ path }) => ({
          path: resolve(standIns[path]),
        }));
        of.onResolve({ filter: /\/loadDelimited$/ }, () => ({ path: resolve('.build/worker/loadDelimited.js') }));
      },
    },
  ],
  logLevel: 'warning',
});
