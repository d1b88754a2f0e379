import { stopIfCancelled, type Cancellation } from '../../base/cancellation';
import type { Counters } from '../../base/counters';
import type { Host, HostFile } from '../../base/host';
import { failed, success, type Outcome } from '../../base/outcome';
import type { Column, Interpretation, RawRun, ReadingProblem } from '../run';
import { assignColumns, type Assignment } from './assignColumns';
import { detectAll, type ReadingChoices } from './choices';
import { columnMeaning } from './columnMeaning';
import { findDialect, type Dialect } from './dialect';
import { findHeader, type Header } from './headerRows';
import { RowBuffer } from './rowBuffer';
import { RowReader } from './rowReader';
import type { RowLayout } from './scanRows';
import { convertColumn } from './unitWords';

type ReadableFile = Extract<HostFile, { ok: true }>;

const LF = 10;
const headBytes = 1 << 17;

/**
 * Reads one data file: opens it through the host, finds out how it is written (or takes what a person wrote), and reads
 * the table into columns of fixed units. One pass over the text, one copy of the numbers; `host.pause` after each piece.
 *
 * Counts `reads` and `rows`. What cannot be decided or read is a problem that says what to write; cells that are no
 * numbers are NaN, counted and listed.
 */
export async function readRun(
  host: Host,
  path: string,
  choices: ReadingChoices = detectAll,
  cancellation: Cancellation = { cancelled: false },
  counters?: Counters,
): Promise<Outcome<RawRun, ReadingProblem>> {
  const told = wrongChoice(choices);
  if (told !== null) return failed(told);
  const file = await host.read(path, choices.encoding ?? undefined);
  if (!file.ok) return failed({ problem: file.reason, message: file.message });
  counters?.add('reads');

  const lines = await headLines(host, file);
  const dialect = findDialect(lines, {
    delimiter: choices.delimiter === null ? undefined : /^ +$/.test(choices.delimiter) ? null : choices.delimiter,
    decimal: choices.decimal as '.' | ',' | null,
    from: (choices.skip ?? 0) + (choices.header ?? 0) + 1,
  });
  if (dialect === null) return failed(noTable(host, path, lines, choices));
  const header = findHeader(dialect, choices.header);
  const assignment = assignColumns(dialect, header, choices);
  if (!assignment.ok) return assignment;

  const layout = rowLayout(dialect, assignment.value);
  const stop = choices.footer === null ? Infinity : (await countLines(file)) - choices.footer + 1;
  const buffer = new RowBuffer(layout.width, expectedRows(file.size, lines, dialect));
  const reader = new RowReader(host, layout, buffer, dialect.records[dialect.start].line - 1, stop);
  for await (const piece of file.chunks()) {
    await reader.push(piece);
    await host.pause();
    stopIfCancelled(cancellation);
  }
  await reader.finish();
  const lastLine = reader.line - 1;
  const textFrom = buffer.textFrom;
  if (choices.footer === null) buffer.dropTextAtEnd();
  counters?.add('rows', buffer.rows);

  const footer = choices.footer ?? (textFrom === 0 ? 0 : lastLine - textFrom + 1);
  const columns = finishColumns(buffer, assignment.value);
  const empty = columns.find(({ values }) => !values.some(Number.isFinite));
  if (empty !== undefined) return failed(noNumbers(host, path, empty, buffer, dialect, choices));
  return success({
    path,
    identity: file.identity,
    interpretation: interpretation(file, dialect, header, assignment.value, buffer, footer, choices),
    columns,
    points: buffer.rows,
    badCells: { count: buffer.counts.bad, first: buffer.firstBadCells() },
    emptyCells: buffer.counts.empty,
  });
}

/** A choice that no file can fulfil. */
function wrongChoice({ delimiter, decimal }: ReadingChoices): ReadingProblem | null {
  if (delimiter !== null && !/^(?:[ -~\t]| +)$/.test(delimiter)) {
    const message = `a delimiter is one character like ";" or "\\t", or " " for runs of blanks, not "${delimiter}"`;
    return { problem: 'no-numbers', message, write: null };
  }
  if (decimal !== null && decimal !== '.' && decimal !== ',') {
    return { problem: 'no-numbers', message: `the decimal sign is "." or ",", not "${decimal}"`, write: null };
  }
  return null;
}

/** The first lines of a file as text, whole lines only unless the file ends there. */
export async function headLines(host: Host, file: ReadableFile): Promise<string[]> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const piece of file.chunks()) {
    parts.push(piece.slice(0, headBytes - length));
    length += parts[parts.length - 1].length;
    if (length >= headBytes) break;
  }
  const head = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    head.set(part, at);
    at += part.length;
  }
  const whole = length < file.size ? head.lastIndexOf(LF) + 1 : length;
  const lines = host.decode(head.subarray(0, whole > 0 ? whole : length)).split('\n');
  if (lines[lines.length - 1] === '') lines.pop();
  return lines;
}

async function countLines(file: ReadableFile): Promise<number> {
  let lines = 0;
  let last = LF;
  for await (const piece of file.chunks()) {
    for (let at = piece.indexOf(LF); at >= 0; at = piece.indexOf(LF, at + 1)) lines++;
    last = piece[piece.length - 1];
  }
  return last === LF ? lines : lines + 1;
}

function rowLayout(dialect: Dialect, { read }: Assignment): RowLayout {
  const slots = new Int8Array(Math.max(...read.map(({ number }) => number))).fill(-1);
  read.forEach(({ number }, k) => (slots[number - 1] = k));
  const separator = dialect.delimiter === null ? -1 : dialect.delimiter.charCodeAt(0);
  return { separator, decimal: dialect.decimal, slots, width: read.length };
}

/** From the mean length of the lines in the first part; a little more, so that the buffer rarely has to grow. */
function expectedRows(size: number, lines: readonly string[], { records, start }: Dialect): number {
  const data = lines.slice(records[start].line - 1);
  const bytes = data.reduce((sum, line) => sum + line.length + 1, 0);
  return Math.ceil((size / (bytes / data.length)) * 1.02) + 16;
}

function finishColumns(buffer: RowBuffer, { read }: Assignment): Column[] {
  const columns = buffer.finish();
  return read.map(({ signal, number, header, unit }, k) => {
    convertColumn(columns[k], unit);
    return { signal, unit: unit.stored, values: columns[k], header, number };
  });
}

function interpretation(
  file: ReadableFile,
  dialect: Dialect,
  header: Header,
  { cells, read }: Assignment,
  buffer: RowBuffer,
  footer: number,
  choices: ReadingChoices,
): Interpretation {
  const signals = new Map(read.map((column) => [column.number, column]));
  return {
    encoding: file.encoding,
    bom: file.bom,
    lineEnds: file.lineEnds,
    delimiter: dialect.delimiter,
    decimal: dialect.decimal,
    skip: header.skip,
    header: header.lines,
    footer,
    block: choices.block,
    columns: Array.from({ length: dialect.width }, (_, k) => {
      const column = signals.get(k + 1);
      const fromHeader = k < cells.length && columnMeaning(cells[k]).unit !== null;
      return {
        number: k + 1,
        header: cells[k]?.text ?? '',
        unitText: fromHeader || column === undefined ? (cells[k]?.unitText ?? '') : column.unit.written,
        signal: column?.signal ?? null,
      };
    }),
    rows: buffer.rows,
    irregularRows: buffer.counts.irregular,
  };
}

function noTable(host: Host, path: string, lines: readonly string[], choices: ReadingChoices): ReadingProblem {
  const shown = host.display(path);
  if (lines.length === 0) return { problem: 'no-numbers', message: `${shown} is empty`, write: null };
  const isTold = choices.delimiter !== null || choices.decimal !== null || choices.skip !== null;
  const how = isTold
    ? 'read as the reading statement says'
    : 'separated by tabs, semicolons, commas, strokes or blanks; what else there is, `reading` says with `skip`, `delimiter` and `decimal`';
  const message = `no table with at least two columns of numbers is found in the first lines of ${shown}, ${how}`;
  return { problem: 'no-numbers', message, write: null };
}

function noNumbers(
  host: Host,
  path: string,
  column: Column,
  buffer: RowBuffer,
  dialect: Dialect,
  choices: ReadingChoices,
): ReadingProblem {
  const bad = buffer.firstBadCells().find(({ field }) => field === column.number);
  const example = bad === undefined ? 'its cells are empty' : `line ${bad.line} has "${bad.text}"`;
  const other = dialect.decimal === '.' ? ',' : '.';
  const wrongSign = bad !== undefined && /^[+-]?\d+[.,]\d+$/.test(bad.text);
  const hint = wrongSign ? `; its decimal sign may be "${other}"` : '';
  const message = `column ${column.number} of ${host.display(path)}, the ${column.signal}, holds no number: ${example}${hint}`;
  const write = wrongSign && choices.decimal === null ? `${readingOf(choices)}\n  decimal "${other}"` : null;
  return { problem: 'no-numbers', message, write };
}

function readingOf({ of }: ReadingChoices): string {
  return of === null ? 'reading' : `reading of "${of}"`;
}
