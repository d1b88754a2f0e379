import { cellText } from './cell';
import type { Dialect } from './dialect';
import { headerCell, type HeaderCell } from './headerCell';
import { headerMeaning } from './headerWords';
import type { HeadRecord } from './headRecords';
import { unitWord } from './unitWords';

/** Where the header stands and what it says, one cell a column of the table. */
export interface Header {
  /** Lines before the header. */
  readonly skip: number;
  /** Lines from the header's first to the first line of numbers. */
  readonly lines: number;
  /** Empty: there is no header, or it does not fit the columns. */
  readonly cells: readonly HeaderCell[];
  /** The header has another number of fields than the table. */
  readonly misfit: boolean;
}

/**
 * Finds the header above the first record of numbers: a row of names, or a row of names over a row of units, or a row of
 * units alone; blank lines between them and the numbers are passed over. `told` gives the number of header lines.
 */
export function findHeader(dialect: Dialect, told: number | null): Header {
  const { records, start } = dialect;
  const firstLine = records[start].line;
  const above = records
    .slice(0, start)
    .filter((record) => record.text.trim() !== '' && record.fields.some((field) => field !== ''))
    .filter((record) => told === null || record.line >= firstLine - told)
    .reverse();
  const none: Header = { skip: firstLine - 1 - (told ?? 0), lines: told ?? 0, cells: [], misfit: false };
  if (told === 0 || above.length === 0) return none;

  const lower = headerFields(above[0], dialect);
  const upper = above.length > 1 ? headerFields(above[1], dialect) : null;
  let names: readonly string[];
  let units: readonly string[] = [];
  let top = above[0];
  if (areUnits(lower) && upper !== null && areNames(upper) && !areUnits(upper)) {
    names = upper;
    units = lower;
    top = above[1];
  } else if (areUnits(lower) || areNames(lower)) {
    names = lower;
  } else if (told !== null) {
    names = lower;
  } else return none;

  const skip = told === null ? top.line - 1 : firstLine - 1 - told;
  const lines = firstLine - 1 - skip;
  const count = filled(names);
  const fits = count >= usedWidth(dialect) && count <= dialect.width;
  if (!fits) return { skip, lines, cells: [], misfit: true };
  const cells = names.map((name, k) => headerCell(withoutCommentSign(name, k), units[k] ?? ''));
  return { skip, lines, cells, misfit: false };
}

/** Number of fields without the empty ones at the end. */
function filled(fields: readonly string[]): number {
  let count = fields.length;
  while (count > 0 && fields[count - 1] === '') count--;
  return count;
}

/** Columns of the table up to the last that is ever filled in the part looked at. */
function usedWidth({ records, start, width }: Dialect): number {
  let used = 0;
  for (let k = start; k < records.length; k++) {
    if (records[k].fields.length === width) used = Math.max(used, filled(records[k].fields));
  }
  return used;
}

function areUnits(fields: readonly string[]): boolean {
  const written = fields.filter((field) => field !== '' && field !== '-');
  const units = written.filter((field) => unitWord(field) !== null).length;
  const bracketed = written.filter((field) => /^[[({].*[\])}]$/.test(field)).length;
  return written.length > 0 && units > 0 && (units === written.length || bracketed === written.length);
}

/** A row of names holds a word that is known, or no number at all. */
function areNames(fields: readonly string[]): boolean {
  const written = fields.filter((field) => field !== '');
  if (!written.some((field) => /\p{L}/u.test(field))) return false;
  const numbers = written.filter((field) => typeof cellText(field, '.') === 'number').length;
  return numbers === 0 || written.some((field) => headerMeaning(headerCell(field).name) !== null);
}

/**
 * The fields of a header line. In a table of blanks the names may hold blanks themselves: then runs of two and more
 * separate, or a bracket belongs to the word before it; the first cut that gives as many names as columns is taken.
 */
function headerFields(record: HeadRecord, dialect: Dialect): readonly string[] {
  const { delimiter, width } = dialect;
  if (delimiter !== null || record.fields.length === width) return record.fields;
  const text = record.text.trim().replace(/^(?:#|%|\/\/|!)\s*/, '');
  const wide = text.split(/\t+| {2,}/).map((field) => field.trim());
  if (wide.length === width) return wide;
  const glued: string[] = [];
  let open = false;
  for (const word of text.split(/\s+/)) {
    if ((open || /^[[({]/.test(word)) && glued.length > 0) glued[glued.length - 1] += ` ${word}`;
    else glued.push(word);
    const last = glued[glued.length - 1];
    open = (last.match(/[[({]/g)?.length ?? 0) > (last.match(/[\])}]/g)?.length ?? 0);
  }
  return glued.length === width ? glued : record.fields;
}

function withoutCommentSign(name: string, column: number): string {
  return column === 0 ? name.replace(/^(?:#|%|\/\/|!)\s*(?=\S)/, '') : name;
}
