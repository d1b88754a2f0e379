import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

let folder: string | null = null;

/** Where a picture of that name goes: the folder that SCREENSHOTS names, else a temporary one; never the checkout. */
export function screenshotPath(name: string): string {
  if (folder === null) {
    const named = process.env.SCREENSHOTS ?? '';
    folder = named === '' ? mkdtempSync(join(tmpdir(), 'thermogloss-pictures-')) : named;
    mkdirSync(folder, { recursive: true });
  }
  return join(folder, `${name.replace(/[^\w.-]+/g, '-').slice(0, 120)}.png`);
}
