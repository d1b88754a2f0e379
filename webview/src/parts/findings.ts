import { keyed, make, setAttribute, setText } from '../dom';
import { startOfLine, type Actions } from '../look';
import type { ViewFinding } from '../../../server/src/protocol/view';
import { say } from '../words';
import type { Part } from './controls';
import { severitySigns, severityWords } from './ledgerRow';

const rank = { error: 0, warning: 1, note: 2 } as const;

/** All findings in words, errors first, each with the way to its line. */
export function findings(actions: Actions): Part {
  const list = make('ul');
  const title = make('h2', { text: say('findings') });
  const bar = make('div', { class: 'section-bar', children: [title] });
  const element = make('section', {
    class: 'findings',
    attributes: { 'aria-label': say('findings') },
    children: [bar, list],
  });
  let shown: readonly ViewFinding[] = [];
  return {
    element,
    update({ state, kept }) {
      shown = [...state.findings].sort((a, b) => rank[a.severity] - rank[b.severity] || a.line - b.line);
      element.hidden = shown.length === 0;
      keyed(
        list,
        shown.map((finding, at) => ({ finding, at })),
        ({ at }) => String(at),
        ({ at }) => {
          const link = make('button', { class: 'link', attributes: { type: 'button' } });
          link.addEventListener('click', () => {
            const finding = shown[at];
            if (finding !== undefined) actions.reveal(finding.uri, finding.statement, startOfLine(finding.line));
          });
          const sign = make('span', { class: 'row-sign', attributes: { 'aria-hidden': 'true' } });
          const text = make('span', { class: 'message' });
          return make('li', { children: [sign, link, text, make('code', { class: 'quiet' })] });
        },
        (li, { finding }) => {
          const [sign, link, text, code] = [...li.children];
          setText(sign, severitySigns[finding.severity]);
          setAttribute(sign, 'data-kind', finding.severity);
          setText(link, `${say(severityWords[finding.severity])}, ${say('line', finding.line)}`);
          setText(text, finding.message);
          setText(code, finding.code);
          li.classList.toggle('is-selected', finding.statement !== null && finding.statement === kept.selected);
        },
      );
    },
  };
}
