import type { LiveWorkspace } from '../liveWorkspace';
import { groundOf } from '../views/grounds';
import type { Ground } from '../views/picture';

/** A gloss as its text stands, also where results are otherwise computed on saving or on demand. null: it cannot be read. */
export async function evaluatedNow(workspace: LiveWorkspace, uri: string): Promise<Ground | null> {
  const open = workspace.texts.get(uri) !== null;
  if (open && (await workspace.currentResults(uri)) === null) await workspace.evaluate(uri);
  return groundOf(workspace, uri, 'temperature');
}
