import type { BadCell } from '../run';

const firstKept = 20;

/** What is counted while rows come in. */
interface Counts {
  bad: number;
  kept: number;
  empty: number;
  irregular: number;
}

/**
 * Columns that grow row by row, and what went wrong in them. Rows whose first wanted cell is text, or that hold no number
 * at all, are taken back when nothing but such rows follows: they are the footer.
 */
export class RowBuffer {
  columns: Float64Array[];
  capacity: number;
  rows = 0;
  readonly counts: Counts = { bad: 0, kept: 0, empty: 0, irregular: 0 };
  private readonly first: BadCell[] = [];
  private atText: Counts | null = null;
  private textRows = 0;
  /** Line on which the rows of text at the end begin; 0: the last row was none. */
  textFrom = 0;

  /** `expected` rows; a good guess saves a copy. */
  constructor(
    readonly width: number,
    expected: number,
  ) {
    this.capacity = Math.max(16, expected);
    this.columns = Array.from({ length: width }, () => new Float64Array(this.capacity));
  }

  grow(): void {
    this.capacity = Math.ceil(this.capacity * 1.4) + 16;
    for (let k = 0; k < this.width; k++) {
      const larger = new Float64Array(this.capacity);
      larger.set(this.columns[k]);
      this.columns[k] = larger;
    }
  }

  /** Marks the state before a row that may turn out to be text. */
  snapshot(): Counts {
    return { ...this.counts };
  }

  badCell(line: number, field: number, text: string): void {
    this.counts.bad++;
    if (this.counts.kept === firstKept) return;
    this.first[this.counts.kept++] = { line, field, text };
  }

  /** Ends a row that has cells missing or no numbers. */
  endOddRow(line: number, isText: boolean, before: Counts): void {
    this.rows++;
    this.counts.irregular++;
    if (!isText) {
      this.textFrom = 0;
      return;
    }
    if (this.textFrom === 0) {
      this.textFrom = line;
      this.textRows = 0;
      this.atText = before;
    }
    this.textRows++;
  }

  /** Takes back the rows of text at the end. */
  dropTextAtEnd(): void {
    if (this.textFrom === 0 || this.atText === null) return;
    this.rows -= this.textRows;
    Object.assign(this.counts, this.atText);
  }

  firstBadCells(): readonly BadCell[] {
    return this.first.slice(0, this.counts.kept);
  }

  /** The columns at their true length: views where little is left over, so that nothing is held twice. */
  finish(): Float64Array[] {
    const cut = this.rows < 0.8 * this.capacity;
    return this.columns.map((column) => (cut ? column.slice(0, this.rows) : column.subarray(0, this.rows)));
  }
}
