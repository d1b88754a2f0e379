import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { BenchRow } from './harness';

const dist = join(__dirname, '..', '..', '..', 'dist');

/** Sizes of what is delivered, minified, in kB of 1000 bytes. */
export function bundles(): Promise<readonly BenchRow[]> {
  const row = (name: string, files: readonly string[], limit: number | null): BenchRow => ({
    name,
    value: files.reduce((sum, file) => sum + statSync(join(dist, file)).size, 0) / 1000,
    unit: 'kB',
    limit,
    note: files.join(', '),
  });
  return Promise.resolve([
    row('client', ['client.js'], null),
    row("client in a browser's worker", ['clientBrowser.js'], null),
    row('language server', ['server.js'], null),
    row("language server in a browser's worker", ['serverWorker.js'], null),
    row('command line', ['program.js'], null),
    row('curves view', ['webview.js', 'webview.css'], 400),
  ]);
}
