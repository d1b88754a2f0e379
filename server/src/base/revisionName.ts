/**
 * Names of revisions: the index stands for itself, with a digest behind it for itself as it was then; `main...` for the last
 * commit that HEAD and main have in common; else git knows them.
 */
export const indexName = 'index';
/** Begins no name that git allows. */
export const indexAsItWas = `${indexName}:`;
export const common = '...';

/** A full commit comes back from a comparison and stays with its files: of it, as many letters as elsewhere are shown. */
const fullCommit = /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/;

/** A name in words for people. */
export function nameWords(name: string): string {
  if (name.startsWith(indexAsItWas)) return indexName;
  if (fullCommit.test(name)) return name.slice(0, 7);
  return name.endsWith(common) ? `merge base of ${name.slice(0, -common.length)} and HEAD` : name;
}
