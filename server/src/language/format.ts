import { parseLines, type ParsedLine } from './syntax/parse';
import { singleBlanks } from './writing/singleBlanks';

/** Heads whose names stand in one column where they follow each other. */
const evaluations = new Set(['step', 'peak', 'glass', 'onset', 'crossing', 'residue']);

interface Row {
  readonly parsed: ParsedLine;
  /** Its content in cells, which are padded to the width of their column; the last one never is. */
  readonly cells: readonly string[];
  readonly indent: string;
  /** Rows of one block share their columns; null: on its own. */
  readonly block: string | null;
  readonly comment: string;
  readonly lineEnd: string;
}

/**
 * The text of a gloss in its usual form: clauses indented by two blanks, their arguments aligned within a statement; names
 * and places of evaluations that follow each other aligned, as are the `=` of a block of `let`; single blanks elsewhere;
 * two blanks before a comment; never more than one empty line. Numbers, texts and comments stay byte for byte, as do
 * BOM and line ends, and lines with a finding stay as they are. Formatting twice changes nothing.
 */
export function format(text: string): string {
  const bom = text.startsWith('\ufeff') ? '\ufeff' : '';
  return (
    bom +
    formattedLines(text)
      .map(({ written }) => written ?? '')
      .join('')
  );
}

/** A line as it stands, in offsets of the text without its BOM, and in its usual form with its line end; null: left out. */
export interface FormattedLine {
  readonly start: number;
  /** Before the line end. */
  readonly lineEnd: number;
  /** Behind the line end. */
  readonly next: number;
  readonly written: string | null;
}

/** What `format` makes of each line. */
export function formattedLines(text: string): readonly FormattedLine[] {
  const { tree, lines } = parseLines(text);
  const rows = blocks(lines.map((parsed) => rowOf(parsed, tree.text)));
  const widths = columnWidths(rows);
  // A line that is not read as it stands must not become the first one, where a BOM or `language 1` would be.
  let empty = rows.find((row) => row.parsed.as !== 'blank')?.parsed.as !== 'untouched';
  let content = rows.length;
  while (content > 0 && rows[content - 1].parsed.as === 'blank') content -= 1;
  return rows.map((row, i) => {
    const { start, lineEnd, next } = row.parsed.line;
    const body = written(row, widths);
    if (body === '' && (empty || i >= content)) return { start, lineEnd, next, written: null };
    empty = body === '';
    return { start, lineEnd, next, written: body + (row.lineEnd === '' ? usualLineEnd(text) : row.lineEnd) };
  });
}

function usualLineEnd(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

function rowOf(parsed: ParsedLine, text: string): Row {
  const { line, as } = parsed;
  const lineEnd = text.slice(line.lineEnd, line.next);
  if (as === 'untouched') {
    return { parsed, cells: [text.slice(line.start, line.lineEnd)], indent: '', block: null, comment: '', lineEnd };
  }
  const comment = line.comment === null ? '' : text.slice(line.comment, line.lineEnd).trimEnd();
  const indent = as === 'clause' || (as === 'comment' && line.comment !== line.start) ? '  ' : '';
  if (as === 'blank' || as === 'comment') return { parsed, cells: [], indent, block: null, comment, lineEnd };
  return { parsed, ...cellsOf(parsed, text), indent, comment, lineEnd };
}

/** The cells of a line that was read, and the kind of block it belongs to. */
function cellsOf(parsed: ParsedLine, text: string): Pick<Row, 'cells' | 'block'> {
  const { line, as, word } = parsed;
  const content = text.slice(line.first, line.end);
  if (word === null) return { cells: [singleBlanks(content)], block: null };
  const first = text.slice(word.start, word.end);
  const rest = singleBlanks(text.slice(word.end, line.end));
  if (as === 'clause') return { cells: rest === '' ? [first] : [first, rest], block: `clauses ${parsed.statement}` };
  const keyword = singleBlanks(first);
  if (keyword === 'let') {
    const at = rest.indexOf('=');
    return { cells: [`let ${rest.slice(0, at).trimEnd()}`, rest.slice(at)], block: 'let' };
  }
  if (!evaluations.has(keyword)) return { cells: [rest === '' ? keyword : `${keyword} ${rest}`], block: null };
  const name = rest.split(' ')[0]!;
  const place = rest.slice(name.length + 1);
  return { cells: place === '' ? [keyword, name] : [keyword, name, place], block: 'evaluations' };
}

/**
 * Blocks of heads get their number: heads of one kind that follow each other, with the clauses of each between them. An
 * empty line, a comment, a line with a finding or another statement ends a block.
 */
function blocks(rows: readonly Row[]): readonly Row[] {
  let current: string | null = null;
  let number = 0;
  return rows.map((row) => {
    if (row.parsed.as === 'clause') return row;
    if (row.block === null) {
      current = null;
      return row;
    }
    if (row.block !== current) number++;
    current = row.block;
    return { ...row, block: `${row.block} ${number}` };
  });
}

function columnWidths(rows: readonly Row[]): ReadonlyMap<string, readonly number[]> {
  const widths = new Map<string, number[]>();
  for (const { block, cells } of rows) {
    if (block === null) continue;
    const known = widths.get(block) ?? [];
    // The last cell of a row is followed by nothing and sets no width.
    cells.slice(0, -1).forEach((cell, i) => (known[i] = Math.max(known[i] ?? 0, [...cell].length)));
    widths.set(block, known);
  }
  return widths;
}

function written(row: Row, widths: ReadonlyMap<string, readonly number[]>): string {
  const columns = row.block === null ? [] : (widths.get(row.block) ?? []);
  const last = row.cells.length - 1;
  const content = row.cells
    .map((cell, i) => (i === last ? cell : cell + ' '.repeat(Math.max(0, (columns[i] ?? 0) - [...cell].length) + 1)))
    .join('');
  if (row.comment === '') return content === '' ? '' : row.indent + content;
  return content === '' ? row.indent + row.comment : `${row.indent}${content}  ${row.comment}`;
}
