/**
 * Rows of a table written as text: one row a line, cells separated by `;`, lists in a cell by `,`, `-` for an empty
 * cell. Wide tables stay readable and can be compared with their sources line by line.
 */
export function tableRows<C extends string>(
  text: string,
  columns: readonly C[],
): readonly Readonly<Record<C, string>>[] {
  return text
    .trim()
    .split('\n')
    .map((line) => {
      const cells = line.split(';').map((cell) => cell.trim());
      if (cells.length !== columns.length) throw new Error(`${columns.length} cells expected: ${line}`);
      const row = Object.fromEntries(columns.map((column, i) => [column, cells[i] === '-' ? '' : cells[i]!]));
      return row as Record<C, string>;
    });
}

/** The list in a cell. */
export function cellList(cell: string): readonly string[] {
  return cell === '' ? [] : cell.split(',').map((item) => item.trim());
}

/** The number in a cell; null where it is empty. */
export function cellNumber(cell: string): number | null {
  if (cell === '') return null;
  const value = Number(cell);
  if (!Number.isFinite(value)) throw new Error(`not a number: ${cell}`);
  return value;
}

/** A list of words of which only `known` exist. */
export function cellWords<W extends string>(cell: string, known: readonly W[]): readonly W[] {
  return cellList(cell).map((word) => {
    const found = known.find((k) => k === word);
    if (found === undefined) throw new Error(`unknown word in a table: ${word}`);
    return found;
  });
}
