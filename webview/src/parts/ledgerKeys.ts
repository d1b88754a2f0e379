import type { Actions } from '../look';
import type { ShownRow } from '../state/ledgerOrder';

/**
 * Keys of the table (tree grid pattern of the ARIA authoring practices): up and down go from row to row, right opens,
 * left closes, Enter goes to the statement's line.
 */
export function ledgerKeys(table: HTMLElement, find: (key: string) => ShownRow | undefined, actions: Actions): void {
  table.addEventListener('keydown', (event) => {
    const row = event.target instanceof HTMLElement ? event.target : null;
    if (row?.tagName !== 'TR' || event.ctrlKey || event.metaKey || event.altKey) return;
    const rows = [...table.querySelectorAll<HTMLElement>('tbody tr')];
    const at = rows.indexOf(row);
    const key = row.dataset.key ?? '';
    const to: Readonly<Record<string, number>> = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 };
    if (event.key in to) focusRow(rows, to[event.key]);
    else if (event.key === 'ArrowRight') actions.keep({ do: 'open', row: key, open: true });
    else if (event.key === 'ArrowLeft') close(rows, at, key, actions);
    else if (event.key === 'Enter') {
      const found = find(key.replace(/\?$/, ''));
      if (found !== undefined) actions.activate(found.row.statement);
    } else if (event.key === ' ') {
      actions.keep({ do: 'open', row: key, open: row.getAttribute('aria-expanded') !== 'true' });
    } else return;
    event.preventDefault();
    event.stopPropagation();
  });
  // A row used by the mouse or by search is the one Tab comes back to.
  table.addEventListener('focusin', (event) => {
    const row = event.target instanceof HTMLElement ? event.target.closest('tbody tr') : null;
    if (row === null) return;
    for (const other of table.querySelectorAll('tbody tr')) other.setAttribute('tabindex', other === row ? '0' : '-1');
  });
}

function focusRow(rows: readonly HTMLElement[], at: number): void {
  rows[Math.min(rows.length - 1, Math.max(0, at))]?.focus();
}

function close(rows: readonly HTMLElement[], at: number, key: string, actions: Actions): void {
  const isDetail = key.endsWith('?');
  if (isDetail) focusRow(rows, at - 1);
  actions.keep({ do: 'open', row: isDetail ? key.slice(0, -1) : key, open: false });
}
