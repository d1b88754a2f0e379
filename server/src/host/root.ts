import { existsSync, lstatSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';

/** `\` only separates on Windows; elsewhere it may stand in a name. */
export function withSlashes(path: string): string {
  return sep === '\\' ? path.replaceAll('\\', '/') : path;
}

/** The nearest folder at or above `folder` that holds `.git` (a folder, or the file of a worktree), else `folder`. */
export function rootFor(folder: string): string {
  const start = realPath(resolve(folder));
  for (let at = start; ; at = dirname(at)) {
    if (existsSync(join(at, '.git'))) return at;
    if (dirname(at) === at) return start;
  }
}

/** Links resolved as far as the path exists; what does not exist yet is appended as written. */
export function realPath(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    const parent = dirname(path);
    return parent === path ? path : join(realPath(parent), basename(path));
  }
}

/** Both already real. */
export function isInside(root: string, path: string): boolean {
  const way = relative(root, path);
  return way === '' || (!isAbsolute(way) && way !== '..' && !way.startsWith(`..${sep}`));
}

/** Only regular files are opened: a pipe would wait for ever, a device never ends. */
export function kindOf(path: string): 'file' | 'folder' | 'missing' | 'other' {
  try {
    const stat = statSync(path);
    return stat.isFile() ? 'file' : stat.isDirectory() ? 'folder' : 'other';
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    return code === 'ENOENT' || code === 'ENOTDIR' ? 'missing' : 'other';
  }
}

/** True for a symbolic link, also one that leads nowhere: writing to it would write some other file. */
export function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
}
