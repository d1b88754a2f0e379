import type { Ledger, LedgerRow } from '../../../server/src/protocol/view';
import { keyed, make, setAttribute, setText } from '../dom';
import type { Look } from '../look';
import { atPoint, cellText, type ShownRow } from '../state/ledgerOrder';
import { say, type Word } from '../words';

export const severitySigns = { error: '✕', warning: '!', note: 'i' } as const;
export const severityWords: Readonly<Record<keyof typeof severitySigns, Word>> = {
  error: 'errorWord',
  warning: 'warningWord',
  note: 'noteWord',
};
const verdictSigns = { met: '✓', 'not met': '✕', inconclusive: '?', 'not evaluated': '–' } as const;

interface Line {
  readonly item: ShownRow;
  readonly isDetail: boolean;
}

export function ledgerRow(open: (key: string, open: boolean) => void, activate: (key: string) => void): HTMLElement {
  const row = make('tr', { attributes: { role: 'row', 'aria-level': '1' } });
  row.addEventListener('click', (event) => {
    const key = row.dataset.key ?? '';
    if (event.target instanceof Element && event.target.closest('.opener') !== null) {
      open(key, row.getAttribute('aria-expanded') !== 'true');
    } else if (window.getSelection()?.isCollapsed !== false) activate(key);
  });
  return row;
}

export function detailRow(): HTMLElement {
  const list = make('dl');
  const cell = make('td', { attributes: { role: 'gridcell' }, children: [list] });
  return make('tr', { class: 'details', attributes: { role: 'row', 'aria-level': '2' }, children: [cell] });
}

export function updateRow(element: HTMLElement, line: Line, columns: Ledger['columns'], look: Look): void {
  const { row, isFirst } = line.item;
  element.classList.toggle('is-selected', row.statement === look.kept.selected);
  if (line.isDetail) {
    updateDetails(element, row, columns.length);
    return;
  }
  const isOpen = look.kept.openRows.includes(row.id);
  setAttribute(element, 'aria-expanded', String(isOpen));
  setAttribute(element, 'aria-selected', String(row.statement === look.kept.selected));
  element.classList.toggle('is-first', isFirst);
  element.dataset.severity = row.severity ?? '';
  element.dataset.statement = row.statement;
  keyed(
    element,
    columns,
    (column) => column.id,
    (column) => make('td', { attributes: { role: 'gridcell' }, children: cellParts(column.id) }),
    (cell, column) => updateCell(cell, column, line.item, look),
  );
}

function cellParts(column: string): Node[] {
  if (column === 'name') {
    const opener = make('button', { class: 'opener', attributes: { type: 'button', tabindex: '-1' } });
    return [opener, make('span', { class: 'row-sign' }), make('span', { class: 'name' })];
  }
  if (column === 'value') return [make('span', { class: 'before' }), make('span', { class: 'after' })];
  if (column === 'limit') return [make('span', { class: 'row-sign' }), make('span')];
  return [make('span')];
}

function updateCell(
  cell: HTMLElement,
  column: Ledger['columns'][number],
  { row, isFirst }: ShownRow,
  look: Look,
): void {
  cell.className = `${column.align} column-${column.id}`;
  const parts = [...cell.children];
  const text = cellText(row, column.id);
  switch (column.id) {
    case 'name': {
      setText(parts[0], look.kept.openRows.includes(row.id) ? '▾' : '▸');
      setAttribute(parts[0], 'aria-label', say('openRow', row.name, row.quantity));
      setSign(
        parts[1],
        row.severity === null ? '' : severitySigns[row.severity],
        row.severity,
        row.severity === null ? '' : say(severityWords[row.severity]),
      );
      setText(parts[2], text);
      setAttribute(parts[2], 'title', text);
      // The name stands once a group; for a screen reader it is in every row.
      parts[2].classList.toggle('unseen', !isFirst);
      break;
    }
    case 'value': {
      const preview = look.preview?.rows.find((r) => r.id === row.id);
      const shown = preview?.value ?? text;
      const [before, after] = atPoint(shown);
      setText(parts[0], before);
      setText(parts[1], after);
      cell.classList.toggle('is-preview', preview !== undefined && preview.value !== text);
      setAttribute(cell, 'title', preview === undefined ? null : text);
      break;
    }
    case 'limit': {
      const sign = row.verdict === null ? '' : verdictSigns[row.verdict];
      setSign(
        parts[0],
        sign,
        row.verdict === 'met' ? 'good' : row.verdict === 'not met' ? 'error' : row.verdict === null ? null : 'warning',
        '',
      );
      setText(parts[1], text);
      break;
    }
    default:
      setText(parts[0], text);
      cell.classList.toggle('is-quiet', column.id === 'since' && !row.sinceMoved);
  }
}

function setSign(element: Element, sign: string, kind: string | null, spoken: string): void {
  setText(element, sign);
  element.setAttribute('data-kind', kind ?? '');
  setAttribute(element, 'role', spoken === '' ? null : 'img');
  setAttribute(element, 'aria-label', spoken === '' ? null : spoken);
  setAttribute(element, 'aria-hidden', spoken === '' ? 'true' : null);
}

function updateDetails(element: HTMLElement, row: LedgerRow, columns: number): void {
  const cell = element.firstElementChild;
  const list = cell?.firstElementChild;
  if (cell === null || cell === undefined || list === null || list === undefined) return;
  setAttribute(cell, 'colspan', String(columns));
  const lines = row.details.flatMap((detail, i) => [
    { key: `${i}t`, tag: 'dt' as const, text: detail.label },
    { key: `${i}d`, tag: 'dd' as const, text: detail.text },
  ]);
  keyed(
    list,
    lines,
    (l) => l.key,
    (l) => make(l.tag),
    (part, l) => setText(part, l.text),
  );
}
