import { shownValue } from '../../presentation/shown';
import { edgeEdit, previewEdits, withEdits, type EdgeTextEdit } from '../../presentation/plot/edgeEdit';
import { TextPositions } from '../../features/positions';
import type { GlossText } from '../../features/workspace';
import type { EdgeEdit, EdgePreview, EdgeRequest } from '../../protocol/view';
import type { LiveWorkspace } from '../liveWorkspace';
import { usersOf } from './grounds';
import type { Picture } from './picture';

interface Moved {
  readonly edit: EdgeTextEdit;
  /** The text that is edited. */
  readonly text: GlossText;
  readonly gloss: GlossText;
}

/** The edit a moved edge comes to, in the texts as they stand now; words where there is none. */
export async function edgeEditOf(workspace: LiveWorkspace, picture: Picture, request: EdgeRequest): Promise<EdgeEdit> {
  const moved = await movedEdge(workspace, picture, request, request.into);
  if ('reason' in moved) return { ok: false, reason: moved.reason };
  const { edit, text } = moved;
  if (!edit.ok) return edit;
  const after = new TextPositions(withEdits(text.tree.text, edit.edits), workspace.texts.encoding);
  const caret = edit.caret === null ? null : after.range({ start: edit.caret, end: edit.caret });
  return {
    ok: true,
    uri: text.uri,
    version: text.version,
    edits: edit.edits.map(({ span, text: put }) => ({ span, range: text.positions.range(span), text: put })),
    label: edit.label,
    touches: edit.file === 'method' ? (await usersOf(workspace, text.path)).length : 0,
    caret,
  };
}

/** The numbers there would be: the run's gloss is evaluated with the edge moved, nothing is written. */
export async function edgePreviewOf(
  workspace: LiveWorkspace,
  picture: Picture,
  request: EdgeRequest,
): Promise<EdgePreview | null> {
  // In the run's gloss whatever the choice: the numbers of this run are the same.
  const moved = await movedEdge(workspace, picture, request, 'gloss');
  if ('reason' in moved || !moved.edit.ok || picture.ground === null) return null;
  const { edit, text, gloss } = moved;
  const edited = withEdits(text.tree.text, previewEdits(edit));
  if (text.uri !== gloss.uri) return { generation: request.generation, written: edit.written, rows: [] };
  const { engine } = workspace.outside.project(gloss.path);
  const snapshot = await engine.evaluate(gloss.path, edited);
  const rows = snapshot.results.map((r) => ({ id: r.id, value: shownValue({ ...r, basis: null }), number: r.value }));
  return { generation: request.generation, written: edit.written, rows };
}

async function movedEdge(
  workspace: LiveWorkspace,
  picture: Picture,
  request: EdgeRequest,
  into: 'gloss' | 'method',
): Promise<Moved | { readonly reason: string }> {
  const { ground, state } = picture;
  if (ground === null || ground.curves === null) return { reason: 'There is nothing drawn to move.' };
  const gloss = await workspace.glossAt(ground.gloss.path);
  if (gloss === null) return { reason: 'The gloss is no longer there.' };
  const method = ground.method === null ? null : await workspace.glossAt(ground.method.path);
  const edit = edgeEdit(
    {
      statement: request.statement,
      edge: request.edge,
      time: request.time,
      perPixel: request.perPixel,
      typed: request.typed,
      into,
    },
    {
      role: state.role,
      editable: state.editable,
      methodEditable: state.editable,
      drawn: ground.snapshot,
      curves: ground.curves,
      present: { gloss: { tree: gloss.tree }, method: method === null ? null : { tree: method.tree } },
    },
  );
  const text = edit.ok && edit.file === 'method' && method !== null ? method : gloss;
  return { edit, text, gloss };
}
