import type { Host } from '../../base/host';

/** Paths of a host: absolute, with `/`. Where files come through the client they are URIs, with their names escaped. */
const uri = /^[a-z][a-z0-9+.-]+:\/\//i;

/** A path, or a part of one, as people write it. */
function plain(path: string, part: string): string {
  if (!uri.test(path)) return part;
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** An absolute path as a gloss can name it. */
export function absolutePath(path: string): string {
  return plain(path, path.replace(/^[a-z][a-z0-9+.-]+:\/\/[^/]*/i, ''));
}

export function folderOf(path: string): string {
  const at = path.lastIndexOf('/');
  if (at < 0) return '';
  // The folder of `/a` is `/`, that of `C:/a` is `C:/`.
  return at === 0 || path[at - 1] === ':' ? path.slice(0, at + 1) : path.slice(0, at);
}

export function nameOf(path: string): string {
  return plain(path, path.slice(path.lastIndexOf('/') + 1));
}

export function inFolder(folder: string, name: string): string {
  return folder.endsWith('/') ? folder + name : `${folder}/${name}`;
}

/** How `to` is written in a gloss of `folder`; whole where they share no root (drives). */
export function relativePath(folder: string, to: string): string {
  const from = folder.split('/').filter((part) => part !== '');
  const way = to.split('/').filter((part) => part !== '');
  const drives = /^[A-Za-z]:$/;
  if ((drives.test(from[0] ?? '') || drives.test(way[0] ?? '')) && from[0] !== way[0]) return to;
  let shared = 0;
  while (shared < from.length && shared < way.length - 1 && from[shared] === way[shared]) shared += 1;
  return [...from.slice(shared).map(() => '..'), ...way.slice(shared).map((part) => plain(to, part))].join('/');
}

/** Whether a file is there, told by the names in its folder: what it holds is not read. */
export async function isThere(host: Host, path: string): Promise<boolean> {
  return (await host.list(folderOf(path))).includes(nameOf(path));
}
