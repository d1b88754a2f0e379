/** Line and column from 1, the column in UTF-16 units, a BOM not counted. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Turns offsets of one text into lines and columns. Lines end with LF or CRLF, as the grammar has it. */
export class LineColumns {
  /** Without a BOM. */
  readonly text: string;
  private readonly starts: number[] = [0];

  constructor(text: string) {
    this.text = text.startsWith('\uFEFF') ? text.slice(1) : text;
    for (let i = this.text.indexOf('\n'); i >= 0; i = this.text.indexOf('\n', i + 1)) this.starts.push(i + 1);
  }

  at(offset: number): Position {
    const inside = Math.min(Math.max(0, offset), this.text.length);
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle] <= inside) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: inside - this.starts[low] + 1 };
  }

  /** The text of a line without its end. */
  line(number: number): string {
    const start = this.starts[number - 1];
    const end = number < this.starts.length ? this.starts[number] : this.text.length;
    return this.text.slice(start, end).replace(/\r?\n$/, '');
  }
}
