/** A name as a file of its own: no folders, nothing a file system would stumble over. */
export function fileName(name: string): string {
  // eslint-disable-next-line no-control-regex -- control characters are what is taken out
  const own = name.replace(/[\u0000-\u001f\\/:*?"<>|]/g, '-').replace(/^\.+/, '');
  return own === '' ? 'curves' : own;
}

/** Last part of a path or address, for a title. */
export function lastPart(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
