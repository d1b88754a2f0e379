import type { LiveWorkspace } from '../liveWorkspace';
import { usersOf } from '../views/grounds';

/** The run glosses whose results are compared. */
export interface Subjects {
  readonly paths: readonly string[];
  /** The method that they were chosen by; null: the one gloss was chosen itself. */
  readonly method: string | null;
}

/** The gloss itself, or those that name it where it is a method. null: it cannot be read. */
export async function subjectsOf(workspace: LiveWorkspace, uri: string): Promise<Subjects | null> {
  const path = workspace.pathOf(uri);
  const text = path === null ? null : await workspace.glossAt(path);
  if (path === null || text === null) return null;
  if (text.tree.role !== 'method') return { paths: [path], method: null };
  return { paths: (await usersOf(workspace, path)).map((g) => g.path), method: path };
}
