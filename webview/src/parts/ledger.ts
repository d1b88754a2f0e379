import type { Ledger } from '../../../server/src/protocol/view';
import { keyed, make, setAttribute, setText } from '../dom';
import type { Actions, Look } from '../look';
import { atPoint, ledgerOrder, type ShownRow } from '../state/ledgerOrder';
import { say } from '../words';
import type { Part } from './controls';
import { ledgerKeys } from './ledgerKeys';
import { detailRow, ledgerRow, updateRow } from './ledgerRow';
import { setToggle, toggle } from './toggle';

/** One row a result: grouped by statement, sortable, each opening to how it came about. */
export function ledger(actions: Actions): Part {
  const heads = make('tr', { attributes: { role: 'row' } });
  const body = make('tbody', { attributes: { role: 'rowgroup' } });
  const table = make('table', {
    class: 'ledger',
    attributes: { role: 'treegrid', 'aria-label': say('resultsOf') },
    children: [make('thead', { attributes: { role: 'rowgroup' }, children: [heads] }), body],
  });
  const all = toggle((on) => actions.keep({ do: 'allRows', all: on }));
  const more = make('span', { class: 'quiet' });
  const none = make('p', { class: 'quiet none', text: say('noResults') });
  const bar = make('div', { class: 'section-bar', children: [make('h2', { text: say('results') }), all, more] });
  const wrap = make('div', { class: 'table-wrap', children: [table] });
  const element = make('section', {
    class: 'results',
    attributes: { 'aria-label': say('results') },
    children: [bar, wrap, none],
  });
  let byKey = new Map<string, ShownRow>();
  ledgerKeys(table, (key) => byKey.get(key), actions);
  return {
    element,
    update(look) {
      const { state, kept } = look;
      const { shown, hidden } = ledgerOrder(state.ledger.rows, kept.sort, kept.allRows);
      byKey = new Map(shown.map((item) => [item.row.id, item]));
      setToggle(all, say('allRows'), kept.allRows);
      all.hidden = state.ledger.rows.every((row) => row.main);
      setText(more, hidden > 0 ? say('rowsHidden', hidden) : '');
      none.hidden = state.ledger.rows.length > 0;
      wrap.hidden = state.ledger.rows.length === 0;
      const columns = shownColumns(state.ledger);
      updateHeads(heads, columns, look, actions);
      table.style.setProperty(
        '--before-point',
        `${Math.max(1, ...shown.map(({ row }) => atPoint(row.value)[0].length))}ch`,
      );
      const lines = shown.flatMap((item) => [
        { key: item.row.id, item, isDetail: false },
        ...(kept.openRows.includes(item.row.id) ? [{ key: `${item.row.id}?`, item, isDetail: true }] : []),
      ]);
      keyed(
        body,
        lines,
        (l) => l.key,
        (l) =>
          l.isDetail
            ? detailRow()
            : ledgerRow(
                (key, open) => actions.keep({ do: 'open', row: key, open }),
                (key) => {
                  const found = byKey.get(key);
                  if (found !== undefined) actions.activate(found.row.statement);
                },
              ),
        (row, l) => updateRow(row, l, columns, look),
      );
      // One row is in the tab order: the one last used, else the selected, else the first.
      const rows = [...body.querySelectorAll<HTMLElement>('tr')];
      const current =
        rows.find((row) => row === document.activeElement) ??
        rows.find((row) => row.getAttribute('aria-selected') === 'true') ??
        rows[0];
      for (const row of rows) setAttribute(row, 'tabindex', row === current ? '0' : '-1');
    },
  };
}

/** A column without a word in any row is left out, save those that carry the table. */
function shownColumns(ledger: Ledger): Ledger['columns'] {
  const carrying = ['name', 'quantity', 'value'];
  return ledger.columns.filter(
    ({ id }) => carrying.includes(id) || ledger.rows.some((row) => id in row && row[id as 'basis'] !== ''),
  );
}

function updateHeads(heads: HTMLElement, columns: Ledger['columns'], { kept }: Look, actions: Actions): void {
  keyed(
    heads,
    columns,
    (column) => column.id,
    (column) => {
      const button = make('button', { class: 'sort', attributes: { type: 'button' } });
      button.addEventListener('click', () => actions.keep({ do: 'sort', column: column.id }));
      return make('th', { attributes: { role: 'columnheader', scope: 'col' }, children: [button] });
    },
    (th, column) => {
      const down = kept.sort?.column === column.id ? kept.sort.down : null;
      setAttribute(th, 'aria-sort', down === null ? 'none' : down ? 'descending' : 'ascending');
      th.className = column.align;
      const button = th.firstElementChild;
      if (button !== null) setText(button, `${column.title}${down === null ? '' : down ? ' ↓' : ' ↑'}`);
    },
  );
}
