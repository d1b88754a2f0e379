import { readdir } from 'node:fs/promises';

/** Folders without glosses of a person's own. */
const passedOver = new Set(['node_modules', '.git', 'dist', 'out']);
/** More are not looked at: a workspace of a whole disk must not hold up an editor. */
const mostFolders = 20_000;

/** Paths of the glosses below the folders, sorted; links are not followed, what cannot be read is passed over. */
export async function glossFilesBelow(roots: readonly string[]): Promise<string[]> {
  const found = new Set<string>();
  const waiting = [...roots];
  for (let seen = 0; waiting.length > 0 && seen < mostFolders; seen += 1) {
    const folder = waiting.pop()!;
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      const path = `${folder.replace(/\/$/, '')}/${entry.name}`;
      if (entry.isDirectory() && !passedOver.has(entry.name)) waiting.push(path);
      else if (entry.isFile() && entry.name.endsWith('.gloss')) found.add(path);
    }
  }
  return [...found].sort();
}
