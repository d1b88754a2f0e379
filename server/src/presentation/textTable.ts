import type { Paint, Style } from './paint';
import { unpainted } from './paint';
import { displayWidth, oneLine, padEnd, padStart } from './width';

export interface TextColumn {
  /** One entry a header line. */
  readonly header: readonly string[];
  /** `plus-minus`: cells of one column have their `±` below each other. */
  readonly align: 'left' | 'right' | 'plus-minus';
}

export interface TextRow {
  readonly cells: readonly string[];
  /** Style of single cells, by column. */
  readonly styles?: Readonly<Record<number, Style>>;
}

const gap = '  ';

/** Lines of a table for a terminal, aligned by display width; `null` among the rows is a rule. No line ends in blanks. */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (TextRow | null)[],
  paint: Paint = unpainted,
): string[] {
  const given = rows.filter((row) => row !== null);
  const cells = columns.map((column, c) => {
    const texts = given.map((row) => oneLine(row.cells[c] ?? ''));
    return column.align === 'plus-minus' ? alignedAtPlusMinus(texts) : texts;
  });
  const widths = columns.map((column, c) => Math.max(0, ...[...column.header, ...cells[c]].map(displayWidth)));
  const last = columns.length - 1;
  const place = (text: string, c: number): string => {
    if (columns[c].align === 'right') return padStart(text, widths[c]);
    return c === last ? text : padEnd(text, widths[c]);
  };
  const lines: string[] = [];
  for (let h = 0; h < Math.max(0, ...columns.map((c) => c.header.length)); h++) {
    lines.push(
      paint(
        'faint',
        columns
          .map((c, i) => place(c.header[h] ?? '', i))
          .join(gap)
          .trimEnd(),
      ),
    );
  }
  let r = 0;
  for (const row of rows) {
    if (row === null) {
      lines.push(paint('faint', widths.map((w) => '-'.repeat(w)).join(gap)));
      continue;
    }
    const line = columns.map((_, c) => {
      const style = row.styles?.[c];
      const placed = place(cells[c][r], c);
      return style === undefined ? placed : placed.replace(cells[c][r], (text) => paint(style, text));
    });
    lines.push(line.join(gap).trimEnd());
    r++;
  }
  return lines;
}

function alignedAtPlusMinus(texts: readonly string[]): string[] {
  const before = (text: string): string => text.split(' ± ')[0];
  const left = Math.max(0, ...texts.filter((t) => t.includes(' ± ')).map((t) => displayWidth(before(t))));
  return texts.map((text) => {
    if (text.includes(' ± ')) return padStart(before(text), left) + text.slice(before(text).length);
    const [number] = /^(?:< )?\S*/.exec(text)!;
    return padStart(number, left) + text.slice(number.length);
  });
}
