import type { Host } from '../../base/host';
import { folderOf, inFolder, nameOf, relativePath } from './paths';

/** Folders looked into, at most: a help for one line must not search a disk. */
const mostFolders = 300;
/** Levels above the gloss, and below each folder reached. */
const up = 2;
const down = 4;
/** Files whose content is compared, at most. */
const mostRead = 12;
const passedOver = /^(?:\.|node_modules$)/;

export interface Missing {
  /** The gloss that names the file. */
  readonly gloss: string;
  /** As it names it. */
  readonly file: string;
  /** Identity of its content when it was last read (`HostFile.identity`); null: never read. */
  readonly identity: string | null;
}

/** Another place where a missing file may be. */
export interface MovedFile {
  /** As the gloss would name it. */
  readonly file: string;
  /** The content is the one that was read before. */
  readonly same: boolean;
}

/**
 * Where a missing file may have gone: files of its name in the folders near the gloss, and files of its kind with the
 * content it had, whatever their name. The same content first, then the nearest. At most `most`.
 */
export async function movedFile(host: Host, missing: Missing, most = 3): Promise<readonly MovedFile[]> {
  const wanted = nameOf(missing.file.replaceAll('\\', '/'));
  const folder = folderOf(missing.gloss);
  const gone = host.resolve(missing.gloss, missing.file);
  const near = (await filesNear(host, missing.gloss)).filter((path) => path !== gone && path !== missing.gloss);
  const named = near.filter((path) => nameOf(path) === wanted);
  const kind = extension(wanted);
  const alike =
    missing.identity === null ? [] : near.filter((path) => extension(nameOf(path)) === kind && !named.includes(path));
  const same = new Set<string>();
  if (missing.identity !== null) {
    for (const path of [...named, ...alike].slice(0, mostRead)) {
      const read = await host.read(path);
      if (read.ok && read.identity === missing.identity) same.add(path);
    }
  }
  const found = [...[...same], ...named.filter((path) => !same.has(path))];
  return found.slice(0, most).map((path) => ({ file: relativePath(folder, path), same: same.has(path) }));
}

/** Paths of files about a gloss, the nearest folders first. A host lists names; what looks like a file is taken for one. */
async function filesNear(host: Host, gloss: string): Promise<readonly string[]> {
  const files: string[] = [];
  const seen = new Set<string>();
  let waiting = [{ folder: folderOf(gloss), level: 0 }];
  let left = mostFolders;
  for (let above = 0; above <= up; above += 1) {
    while (waiting.length > 0 && left > 0) {
      const { folder, level } = waiting.shift()!;
      if (seen.has(folder)) continue;
      seen.add(folder);
      left -= 1;
      for (const name of await host.list(folder)) {
        if (passedOver.test(name)) continue;
        const path = host.resolve(inFolder(folder, 'any'), name);
        if (extension(name) !== '') files.push(path);
        else if (level < down) waiting.push({ folder: path, level: level + 1 });
      }
    }
    const parent = host.resolve(gloss, '../'.repeat(above + 1) + '.');
    waiting = [{ folder: parent, level: 0 }];
  }
  return files;
}

function extension(name: string): string {
  return /\.([A-Za-z][A-Za-z0-9]{0,5})$/.exec(name)?.[1]?.toLowerCase() ?? '';
}
