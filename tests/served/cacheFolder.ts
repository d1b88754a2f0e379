import { homedir } from 'node:os';
import { join } from 'node:path';

/** The package that carries the editor's own server and workbench, and the Node.js release line it is built for. */
export const editorPackage = { name: 'code-server', version: '4.139.1', node: '24' } as const;

/** Where the prepared editor is kept: in the user's cache, one folder a version and processor (about 800 MB). */
export function editorFolder(): string {
  const cache = process.env.XDG_CACHE_HOME ?? '';
  const base = cache === '' ? join(homedir(), '.cache') : cache;
  return join(base, 'thermogloss', `editor-${editorPackage.version}-${process.arch}`);
}
