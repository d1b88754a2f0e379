import type { Folder } from './floors';
import type { Import } from './imports';

/** What breaks the table of floors, in words; empty where all imports keep it. */
export function brokenFloors(imports: readonly Import[], folders: readonly Folder[]): string[] {
  const byName = new Map(folders.map((f) => [f.name, f]));
  return imports.flatMap((i) => {
    const from = byName.get(folderOf(i.from));
    if (from === undefined) return [`${i.from} is in no folder of the table`];
    if (!i.ours) {
      const allowed = from.packages.some(
        (p) => i.to === p || (p === 'node:' && i.to.startsWith(p)) || i.to.startsWith(`${p}/`),
      );
      return allowed ? [] : [`${i.from} imports the package ${i.to}`];
    }
    const to = byName.get(folderOf(i.to));
    if (to === undefined) return [`${i.from} imports ${i.to}, which is in no folder of the table`];
    if (to === from || (i.typeOnly && from.typesOf.includes(i.to))) return [];
    if (to.floor >= from.floor) return [`${i.from} (floor ${from.floor}) imports ${i.to} (floor ${to.floor})`];
    if (from.only !== null && !from.only.includes(to.name))
      return [`${i.from} imports ${i.to}: ${from.name} may not know it`];
    return [];
  });
}

/** A cycle of files that load each other, as a list of files; null where there is none. Types load nothing. */
export function cycle(imports: readonly Import[]): readonly string[] | null {
  const next = new Map<string, string[]>();
  for (const i of imports) {
    if (i.ours && !i.typeOnly) next.set(i.from, [...(next.get(i.from) ?? []), i.to]);
  }
  const finished = new Set<string>();
  const path: string[] = [];
  const search = (file: string): readonly string[] | null => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (finished.has(file)) return null;
    path.push(file);
    for (const to of next.get(file) ?? []) {
      const found = search(to);
      if (found !== null) return found;
    }
    path.pop();
    finished.add(file);
    return null;
  };
  for (const file of next.keys()) {
    const found = search(file);
    if (found !== null) return found;
  }
  return null;
}

export function folderOf(path: string): string {
  return path.split('/')[0];
}
