import type { KeptView } from '../../../server/src/protocol/messages';
import type { LedgerRow } from '../../../server/src/protocol/view';

export interface ShownRow {
  readonly row: LedgerRow;
  /** First of its statement's rows in a row: it carries the name. */
  readonly isFirst: boolean;
}

/**
 * Rows in the order to show: as written, grouped by statement, or sorted. Sorted by name the groups stay together; by
 * another column each row stands on its own. Rows without a number come last either way. Equal rows keep their order.
 */
export function ledgerOrder(
  rows: readonly LedgerRow[],
  sort: KeptView['sort'],
  allRows: boolean,
): { readonly shown: readonly ShownRow[]; readonly hidden: number } {
  const visible = rows.filter((row) => allRows || row.main);
  const sorted = sort === null ? visible : [...visible].sort((a, b) => compare(a, b, sort.column, sort.down));
  const shown = sorted.map((row, i) => ({ row, isFirst: i === 0 || sorted[i - 1].statement !== row.statement }));
  return { shown, hidden: rows.length - visible.length };
}

function compare(a: LedgerRow, b: LedgerRow, column: string, down: boolean): number {
  const sign = down ? -1 : 1;
  if (column === 'value') {
    if (a.number === null || b.number === null) return Number(a.number === null) - Number(b.number === null);
    return sign * (a.number - b.number);
  }
  const [left, right] = [cellText(a, column), cellText(b, column)];
  if (left === '' || right === '') return Number(left === '') - Number(right === '');
  return sign * order.compare(left, right);
}

const order = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** The text of one cell, by the id of its column. An id this view does not know has none. */
export function cellText(row: LedgerRow, column: string): string {
  switch (column) {
    case 'name':
    case 'kind':
    case 'quantity':
    case 'value':
    case 'unit':
    case 'basis':
    case 'state':
    case 'since':
    case 'limit':
      return row[column];
    case 'verdict':
      return row.verdict ?? '';
    default:
      return '';
  }
}

/**
 * A printed value before and after its decimal point or, where it has none, its last digit, so that a column of them
 * lines up: `14.793 ± 0.026 %` is `14` and `.793 ± 0.026 %`.
 */
export function atPoint(value: string): readonly [string, string] {
  const number = /^[<>≤≥]?\s*[-−+]?\d+/.exec(value);
  return number === null ? ['', value] : [number[0], value.slice(number[0].length)];
}
