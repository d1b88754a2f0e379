import type { EdgeEdit, EdgeRequest, TextRange } from '../../../server/src/protocol/view';
import type { Translate } from '../text/translate';

type Edit = Extract<EdgeEdit, { readonly ok: true }>;

/** What moving an edge needs of the editor. */
export interface EdgeWorld {
  /** The edit as the server would write it now; null: no answer. */
  ask(request: EdgeRequest): Promise<EdgeEdit | null>;
  /** The text the edit is for; null: not there. */
  open(uri: string): Promise<{ readonly version: number; readonly editable: boolean } | null>;
  /** Asks a person whether a method used by so many glosses shall change. */
  confirm(touches: number): Promise<boolean>;
  /** One edit, one undo; false where the text was not changed. */
  apply(edit: Edit): Promise<boolean>;
  caret(uri: string, range: TextRange): Promise<void>;
}

/**
 * Writes a moved edge into the text: only where the text is still the one the edit was made for and may be written. Where
 * it changed in between, the server is asked once more; after that the move is refused in words, never misplaced.
 */
export async function moveEdge(request: EdgeRequest, world: EdgeWorld, t: Translate): Promise<EdgeEdit> {
  let edit = await currentEdit(request, world, t);
  if (edit.ok && request.into === 'method') {
    if (!(await world.confirm(edit.touches))) return refusal(t('The method was left as it is.'));
    edit = await currentEdit(request, world, t);
  }
  if (!edit.ok) return edit;
  if (!(await world.apply(edit))) return refusal(t('The editor did not take the edit; nothing was written.'));
  if (edit.caret !== null) await world.caret(edit.uri, edit.caret);
  return edit;
}

async function currentEdit(request: EdgeRequest, world: EdgeWorld, t: Translate): Promise<EdgeEdit> {
  for (let tries = 0; tries < 2; tries++) {
    const edit = await world.ask(request);
    if (edit === null) return refusal(t('The language server gave no answer; nothing was written.'));
    if (!edit.ok) return edit;
    const document = await world.open(edit.uri);
    if (document === null) return refusal(t('The text is no longer there; nothing was written.'));
    if (!document.editable) return refusal(t('The text is read-only; nothing was written.'));
    // Without a version the server read the file; opening it told the server of the text, and the next answer has one.
    if (edit.version === document.version) return edit;
  }
  return refusal(t('The text changed while the edge was moved; nothing was written.'));
}

function refusal(reason: string): EdgeEdit {
  return { ok: false, reason };
}
