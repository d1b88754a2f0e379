import type { Freshness } from '../../../server/src/protocol/view';
import { make, setAttribute, setText } from '../dom';
import { startOfLine, type Actions, type Look } from '../look';
import { say } from '../words';

const signs: Readonly<Record<Freshness['state'] | 'lost', string>> = {
  current: '●',
  computing: '◌',
  stale: '▲',
  empty: '○',
  lost: '✕',
};

export interface Head {
  readonly element: HTMLElement;
  update(look: Look | null, words: Pick<Look, 'kept' | 'freshness' | 'connection'>): void;
}

/** What is measured, how, and how fresh the picture is. Its height never changes with its words. */
export function head(actions: Actions): Head {
  const title = make('h1', { class: 'title', text: '\u00a0' });
  const sign = make('span', { class: 'sign', attributes: { 'aria-hidden': 'true' } });
  const words = make('span', { class: 'words' });
  const link = make('button', { class: 'link', attributes: { type: 'button' } });
  const fresh = make('div', { class: 'freshness', attributes: { role: 'status' }, children: [sign, words, link] });
  const pin = make('button', { class: 'toggle pin', attributes: { type: 'button' } });
  const conditions = make('p', { class: 'conditions' });
  const row = make('div', { class: 'head-row', children: [title, fresh, pin] });
  const element = make('header', { class: 'head', children: [row, conditions] });
  let error: Freshness['error'] = null;
  link.addEventListener('click', () => {
    if (error !== null) actions.reveal(error.uri, null, startOfLine(error.line));
  });
  pin.addEventListener('click', () => actions.pin(pin.getAttribute('aria-pressed') !== 'true'));
  return {
    element,
    update(look, { kept, freshness, connection }) {
      const isUp = connection.up;
      const text = isUp
        ? fresherWords(freshness, look?.state.generation.revision)
        : connection.text || say('connectionLost');
      error = freshness.error;
      setText(title, look?.state.title || '\u00a0');
      setAttribute(title, 'title', look?.state.title ?? null);
      setText(conditions, look?.state.conditions.join(' · ') ?? '');
      conditions.hidden = (look?.state.conditions.length ?? 0) === 0;
      setText(sign, isUp ? signs[freshness.state] : signs.lost);
      setText(words, error === null || !isUp ? text : '');
      setText(link, error === null || !isUp ? '' : text);
      link.hidden = error === null || !isUp;
      setAttribute(link, 'title', error === null ? null : say('goToError', error.message));
      fresh.dataset.state = isUp ? freshness.state : 'lost';
      setText(pin, say(kept.pinned ? 'pinned' : 'following'));
      setAttribute(pin, 'aria-pressed', String(kept.pinned));
      setAttribute(pin, 'title', say(kept.pinned ? 'followHelp' : 'pinHelp'));
    },
  };
}

/** `current · revision 41`; words that name a revision themselves stay as they are. */
function fresherWords(freshness: Freshness, revision: number | undefined): string {
  if (revision === undefined || freshness.state !== 'current' || /\d/.test(freshness.text)) return freshness.text;
  return `${freshness.text} · ${say('revision', revision)}`;
}
