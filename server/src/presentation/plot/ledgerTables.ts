import type { Ledger, LedgerRow } from '../../protocol/view';
import { csv } from '../csv';
import { escapeXml } from './escapeXml';
import { markdownTable } from '../markdownTable';

/** The rows that are copied: those asked for, in the order they are given. */
export interface CopiedRows {
  readonly columns: Ledger['columns'];
  readonly rows: readonly LedgerRow[];
}

const extra = [
  { id: 'number', title: 'Number', align: 'right' },
  { id: 'unit', title: 'Unit', align: 'left' },
] as const;

/**
 * Results as tab-separated cells for a spreadsheet: each value as it is printed, and behind it the number at full
 * precision with a decimal point, whatever the system's language, and its unit. No cell holds a tab or a line end.
 */
export function ledgerTsv(ledger: CopiedRows): string {
  return tableOf(ledger)
    .map((record) => `${record.map((cell) => cell.replace(/[\t\r\n]+/g, ' ')).join('\t')}\n`)
    .join('');
}

/** The same as RFC 4180: commas, CRLF, quotes where they are needed, decimal points. */
export function ledgerCsv(ledger: CopiedRows): string {
  return csv(tableOf(ledger));
}

/** A plain table. The side of a cell is an attribute: a style would be refused by the content policy of the page that copies it. */
export function ledgerHtml(ledger: CopiedRows): string {
  const columns = columnsOf(ledger);
  const [head, ...rows] = tableOf(ledger);
  const cells = (tag: 'th' | 'td', record: readonly string[]): string =>
    record
      .map((cell, c) => `<${tag}${columns[c].align === 'right' ? ' align="right"' : ''}>${escapeXml(cell)}</${tag}>`)
      .join('');
  const body = rows.map((record) => `<tr>${cells('td', record)}</tr>`).join('');
  return `<table><thead><tr>${cells('th', head)}</tr></thead><tbody>${body}</tbody></table>`;
}

/** A pipe table with what is read; the full-precision number is left to the other forms. */
export function ledgerMarkdown(ledger: CopiedRows): string {
  const columns = ledger.columns.filter((c) => ledger.rows.some((row) => cellOf(row, c.id) !== ''));
  const rows = ledger.rows.map((row) => columns.map((c) => cellOf(row, c.id)));
  return `${markdownTable(
    columns.map(({ title, align }) => ({ header: title, align })),
    rows,
  ).join('\n')}\n`;
}

function tableOf(ledger: CopiedRows): string[][] {
  const columns = columnsOf(ledger);
  return [columns.map((c) => c.title), ...ledger.rows.map((row) => columns.map((c) => cellOf(row, c.id)))];
}

/** The columns of the table, number and unit beside the value. */
function columnsOf({ columns }: CopiedRows): Ledger['columns'] {
  const at = columns.findIndex((c) => c.id === 'value') + 1;
  return [...columns.slice(0, at), ...extra, ...columns.slice(at)];
}

function cellOf(row: LedgerRow, column: string): string {
  switch (column) {
    case 'name':
    case 'quantity':
    case 'value':
    case 'basis':
    case 'state':
    case 'since':
    case 'limit':
    case 'unit':
      return row[column];
    case 'number':
      return row.number === null ? '' : String(row.number);
    default:
      return '';
  }
}
