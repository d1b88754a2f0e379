import type { Paint, Style } from '../paint';
import { unpainted } from '../paint';
import { textTable } from '../textTable';
import type { HistoryModel, HistoryStatus } from './model';
import { cellsOf, historyHeads, historyNotes, shownRevision } from './shownHistory';

const style: Readonly<Record<HistoryStatus, Style>> = {
  first: 'note',
  'oldest here': 'note',
  changed: 'warning',
  added: 'note',
  removed: 'note',
  'within tolerance': 'faint',
  equal: 'faint',
  absent: 'faint',
  'cannot compute': 'error',
};

/** One result through the revisions for a terminal: a row a revision, newest first. */
export function historyText(model: HistoryModel, paint: Paint = unpainted): string {
  const lines = [`${paint('strong', `${model.name} of ${model.gloss}`)}, newest first`, ''];
  lines.push(
    ...textTable(
      historyHeads.map((h, c) => ({
        header: [h],
        align: c === 3 ? 'plus-minus' : c === 4 || c === 5 ? 'right' : 'left',
      })),
      model.rows.map((row) => ({ cells: cellsOf(shownRevision(row)), styles: { 0: style[row.status] } })),
      paint,
    ),
  );
  return `${[...lines, '', ...historyNotes(model)].join('\n')}\n`;
}
