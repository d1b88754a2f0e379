import type { Host } from '../base/host';
import type { Snapshot } from '../engine/snapshot';

/**
 * The commit checked out, and which of the files that were evaluated do not stand in it as they were read.
 * @param identity digest of the text of the gloss, as `HostFile.identity`
 * @param committed files of that commit
 * @param top folder that the files are shown relative to
 */
export async function revisionWords(
  snapshot: Snapshot,
  identity: string | null,
  commit: string,
  committed: Host,
  top: string,
): Promise<string> {
  const { gloss, run, inputs } = snapshot;
  const files = [{ display: gloss.display, identity }, ...(run === null ? [] : [run]), ...inputs];
  const others: string[] = [];
  for (const file of files) {
    const there = await committed.read(`${top}/${file.display}`);
    if (!there.ok || there.identity !== file.identity) others.push(file.display);
  }
  return others.length === 0 ? commit : `${commit}, differing in ${others.join(', ')}`;
}
