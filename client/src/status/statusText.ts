import type { StatusParams } from '../../../server/src/protocol/messages';
import type { ServerState } from '../server/serverState';
import type { Translate } from '../text/translate';

/** What the status item is made of. */
export interface StatusInput {
  readonly server: ServerState;
  /** Of the active gloss; null: nothing heard of it yet. */
  readonly gloss: Pick<StatusParams, 'computing' | 'errors' | 'warnings' | 'text'> | null;
  /** `editor.inlayHints.enabled` of the editor. */
  readonly hints: string;
  /** The help about hints that are off was read. */
  readonly helped: boolean;
  /** Inline results are switched on. */
  readonly inline: boolean;
}

export interface StatusText {
  readonly text: string;
  /** Lines of plain text. */
  readonly lines: readonly string[];
  /** The help about hints that are off is due. */
  readonly help: boolean;
}

/** Words and icons of the editor's own set for the one status item. */
export function statusText({ server, gloss, hints, helped, inline }: StatusInput, t: Translate): StatusText {
  const off = hints === 'off';
  const lines: string[] = [];
  if (off) {
    lines.push(
      t('Your editor shows no inlay hints, so results stand in hovers and beside the curves only.'),
      t('They come into the text when "editor.inlayHints.enabled" is on.'),
    );
  } else if (!inline) lines.push(t('Inline results are switched off in this workspace.'));
  const help = off && !helped;
  const mark = help ? ` $(info) ${t('no inline results')}` : '';
  if (server === 'failed' || server === 'stopped') {
    const text = t('not running');
    return { text: `$(error) ${text}`, lines: [t('The language server is not running.'), ...lines], help };
  }
  if (server === 'starting' || server === 'lost' || gloss === null) {
    return { text: `$(sync) ${t('starting')}`, lines: [t('The language server is starting.'), ...lines], help };
  }
  const icon = gloss.computing ? 'sync' : gloss.errors > 0 ? 'error' : gloss.warnings > 0 ? 'warning' : 'check';
  const text = gloss.computing ? t('computing') : gloss.text;
  return { text: `$(${icon}) ${text}${mark}`, lines: [gloss.text, ...lines], help };
}
