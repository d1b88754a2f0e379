import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { atTheEnd } from './ending';

/** A new empty folder, gone at the latest when this process ends. */
export function temporaryFolder(use: string): { readonly folder: string; remove(): void } {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), `thermogloss-${use}-`)));
  // A server that was just killed may still hold files in it.
  const remove = atTheEnd(() => rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 50 }));
  return { folder, remove };
}
