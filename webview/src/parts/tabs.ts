import { keyed, make, px, setAttribute, setText } from '../dom';
import type { FrameLane } from '../draw/frame';
import { rowHeight } from '../geometry/lanes';
import type { Actions, Look } from '../look';
import { say } from '../words';
import { severitySigns, severityWords } from './ledgerRow';

/** The names of the bands on the head of their first lane: a click or Enter goes to the statement. */
export function updateTabs(parent: HTMLElement, look: Look, lane: FrameLane, actions: Actions): void {
  const placed = [...lane.tabs].sort((a, b) => a.row - b.row || a.left - b.left);
  keyed(
    parent,
    placed,
    (tab) => tab.id,
    (tab) => {
      const button = make('button', {
        class: 'tab',
        attributes: { type: 'button' },
        children: [
          make('span', { class: 'row-sign', attributes: { 'aria-hidden': 'true' } }),
          make('span', { class: 'tab-name' }),
        ],
      });
      button.addEventListener('click', () => actions.activate(tab.id));
      return button;
    },
    (button, tab) => {
      const band = look.frame.bands.find((p) => p.band.statement === tab.id)?.band;
      if (band === undefined) return;
      button.style.left = px(tab.left);
      button.style.top = px(tab.row * rowHeight + 2);
      button.style.width = px(tab.width);
      const [sign, name] = [...button.children];
      setText(sign, band.severity === null ? '' : severitySigns[band.severity]);
      setAttribute(sign, 'data-kind', band.severity ?? '');
      setText(name, band.name);
      button.classList.toggle('is-selected', band.statement === look.kept.selected);
      setAttribute(button, 'aria-pressed', String(band.statement === look.kept.selected));
      const more = [
        ...(band.severity === null ? [] : [say(severityWords[band.severity])]),
        ...(band.overlaps.length === 0 ? [] : [say('tabOverlap', band.overlaps.join(', '))]),
      ];
      setAttribute(button, 'aria-label', [band.name, band.kind, ...more].join(', '));
      setAttribute(button, 'title', [`${band.kind} ${band.name}`, ...more].join(', '));
    },
  );
}
