import type { LiveWorkspace } from '../liveWorkspace';
import { groundOf } from '../views/grounds';
import type { Ground } from '../views/picture';

/** Computings that may be called off, by typing or by files that change, before it is given up. */
const mostTries = 50;

/**
 * A gloss as its text stands, also where results are otherwise computed on saving or on demand. null: it cannot be read, or
 * changes all the time: an older text is never given in its place.
 */
export async function evaluatedNow(workspace: LiveWorkspace, uri: string): Promise<Ground | null> {
  for (let tries = 0; tries < mostTries; tries++) {
    const isOpen = workspace.texts.get(uri) !== null;
    if (isOpen && (await workspace.currentResults(uri)) === null) await workspace.evaluate(uri);
    const ground = await groundOf(workspace, uri, 'temperature');
    const open = workspace.texts.get(uri);
    if (open === null || ground?.gloss.text === open.text) return ground;
  }
  return null;
}
