import type { Snapshot } from '../engine/snapshot';
import type { OpenProject } from './outside';

/**
 * Display paths of the method and the glosses of blanks that took part with an open text which is not (yet) what is saved:
 * who looks at the files finds other statements. The gloss itself does not count.
 */
export async function unsavedBeside({ engine, host, saved }: OpenProject, snapshot: Snapshot): Promise<string[]> {
  const { gloss, method } = snapshot;
  const { program } = engine.meaning(gloss.tree.text, method?.tree.text ?? null);
  const blanks = program.blanks.map(({ statement }) => statement.file).filter((file) => file.endsWith('.gloss'));
  const paths = [...(method === null ? [] : [method.path]), ...blanks.map((file) => host.resolve(gloss.path, file))];
  const unsaved: string[] = [];
  for (const path of new Set(paths)) {
    const [open, file] = await Promise.all([host.read(path), saved.read(path)]);
    if (open.ok && (!file.ok || file.identity !== open.identity)) unsaved.push(host.display(path));
  }
  return unsaved;
}
