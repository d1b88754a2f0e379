import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { temporaryFolder } from './temporaryFolder';

/** A folder below `examples` (`''` for all of them), or files by name. */
export type Content = string | Readonly<Record<string, string>>;

export interface Workspace {
  readonly folder: string;
  remove(): void;
}

/** A folder of its own to work in: what is edited in it stays out of the checkout. */
export function workspace(content: Content): Workspace {
  const { folder: base, remove } = temporaryFolder('work');
  const folder = join(base, typeof content === 'string' && content !== '' ? content : 'work');
  if (typeof content === 'string') {
    const scripts = /[\\/]generator(?:[\\/]|$)/;
    cpSync(join('examples', content), folder, { recursive: true, filter: (path) => !scripts.test(path) });
  } else {
    for (const [name, text] of Object.entries(content)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
  }
  return { folder, remove };
}
