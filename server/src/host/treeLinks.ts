import { posix } from 'node:path';

/** Git's mode of a symbolic link, whose content is the path that it leads to (gitformat-index(5), "object type 1010"). */
export const linkMode = '120000';
const mark = 'link ';

/** The id of the content of a link, told from that of a file. */
export function asLink(id: string): string {
  return mark + id;
}

/** `passed`: the paths that were looked at, the last one being where it ended. */
export type Followed = { readonly passed: readonly string[] } & (
  { readonly ok: true; readonly id: string } | { readonly ok: false; readonly why: 'missing' | 'outside' | 'endless' }
);

/** As many as Linux follows in one path (path_resolution(7)). */
const mostLinks = 40;

/** The file that a path of a tree stands for: links on the way, of files and folders, are followed within the tree. */
export async function follow(
  path: string,
  ids: { get(path: string): string | undefined },
  content: (id: string) => Promise<Uint8Array | null>,
): Promise<Followed> {
  const passed: string[] = [];
  let at = path;
  for (let count = 0; count <= mostLinks; count++) {
    passed.push(at);
    const id = ids.get(at);
    if (id !== undefined && !id.startsWith(mark)) return { ok: true, passed, id };
    const link = firstLink(at, ids);
    const bytes = link === null ? null : await content(link.id);
    if (link === null || bytes === null) return { ok: false, passed, why: 'missing' };
    if (link.name !== at) passed.push(link.name);
    const target = Buffer.from(bytes).toString('utf8');
    const next = posix.join(posix.dirname(link.name), target, at.slice(link.name.length));
    if (posix.isAbsolute(target) || /^[A-Za-z]:/.test(target) || next === '..' || next.startsWith('../')) {
      return { ok: false, passed, why: 'outside' };
    }
    at = next === '.' ? '' : next.replace(/\/$/, '');
  }
  return { ok: false, passed, why: 'endless' };
}

function firstLink(
  path: string,
  ids: { get(path: string): string | undefined },
): { readonly name: string; readonly id: string } | null {
  const parts = path.split('/');
  for (let count = 1; count <= parts.length; count++) {
    const name = parts.slice(0, count).join('/');
    const id = ids.get(name);
    if (id?.startsWith(mark)) return { name, id: id.slice(mark.length) };
  }
  return null;
}
