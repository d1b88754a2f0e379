/**
 * Paths of a workspace that is no disk: the URIs themselves. A relative path is resolved on the path of the URI, its names
 * are escaped there and shown plainly.
 */
export function resolveUri(from: string, relative: string): string {
  const { base, segments } = split(from);
  const own = relative.startsWith('/') ? [] : segments.slice(0, -1);
  for (const part of relative.split('/')) {
    if (part === '' || part === '.') continue;
    if (part === '..') own.pop();
    else own.push(encodeURIComponent(part));
  }
  return `${base}/${own.join('/')}`;
}

export function folderOf(uri: string): string {
  const { base, segments } = split(uri);
  return `${base}/${segments.slice(0, -1).join('/')}`.replace(/\/$/, '');
}

export function isBelow(root: string, uri: string): boolean {
  return uri === root || uri.startsWith(root.endsWith('/') ? root : `${root}/`);
}

/** Relative to the root where it lies below it, escapes undone. */
export function displayUri(root: string, uri: string): string {
  const shown = isBelow(root, uri) ? uri.slice(root.length).replace(/^\//, '') : uri;
  try {
    return decodeURIComponent(shown);
  } catch {
    return shown;
  }
}

function split(uri: string): { readonly base: string; readonly segments: readonly string[] } {
  const match = /^([a-z][a-z0-9+.-]*:\/\/[^/]*)(\/[^?#]*)?/i.exec(uri);
  if (match === null) return { base: '', segments: uri.split('/').filter((s) => s !== '') };
  return { base: match[1], segments: (match[2] ?? '').split('/').filter((s) => s !== '') };
}
