import { headRecords, recordKinds, type HeadRecord, type RecordKinds } from './headRecords';

/** How the table is written and where its numbers begin. */
export interface Dialect {
  readonly delimiter: string | null;
  readonly decimal: '.' | ',';
  readonly records: readonly HeadRecord[];
  /** Index of the first record of numbers. */
  readonly start: number;
  /** Fields of a record of numbers (the most frequent count). */
  readonly width: number;
}

const delimiters: readonly (string | null)[] = ['\t', ';', ',', '|', null];

/** Records that are looked at for a decision. */
const looked = 500;

/**
 * Finds separator, decimal sign and the first record of numbers: of all combinations the one that turns the most cells
 * into numbers, a cell that stays text counting twice against it. A tie goes to the rarer separator (tab, semicolon,
 * comma, stroke, blanks) and the point. What is told is not searched. Null: no table with at least two numbers a line.
 */
export function findDialect(
  lines: readonly string[],
  told: { readonly delimiter: string | null | undefined; readonly decimal: '.' | ',' | null; readonly from: number },
): Dialect | null {
  let best: Dialect | null = null;
  let bestScore = -1;
  const head = lines.slice(0, looked);
  // Most combinations cannot win whatever is in their cells, which is cheaper to see than to read them all.
  for (const delimiter of told.delimiter === undefined ? delimiters : [told.delimiter]) {
    if (mostFields(head, delimiter) <= Math.max(bestScore, 1)) continue;
    const records = headRecords(head, delimiter);
    for (const decimal of told.decimal === null ? (['.', ','] as const) : [told.decimal]) {
      if (mostNumbers(records, decimal) <= Math.max(bestScore, 1)) continue;
      const table = findTable(records, decimal, told.from);
      if (table === null || table.score <= bestScore) continue;
      bestScore = table.score;
      best = { delimiter, decimal, records, start: table.start, width: table.width };
    }
  }
  return best;
}

/** No table can have more fields than this: those of lines without a separator are alone in their record. */
function mostFields(lines: readonly string[], delimiter: string | null): number {
  const all = lines.some((line) => line.includes('"'));
  let most = 0;
  for (const line of lines) {
    const cut = delimiter === null ? line.includes(' ') || line.includes('\t') : line.includes(delimiter);
    if (cut || all) most += line.length + 1;
  }
  return most;
}

/** No table can have more numbers than this: none holds the other decimal sign. */
function mostNumbers(records: readonly HeadRecord[], decimal: '.' | ','): number {
  const other = decimal === '.' ? ',' : '.';
  let most = 0;
  for (const { fields } of records) for (const field of fields) if (field !== '' && !field.includes(other)) most++;
  return most;
}

interface Table {
  readonly start: number;
  readonly width: number;
  readonly score: number;
}

/** The first record from line `from` on that begins a table of numbers. */
function findTable(records: readonly HeadRecord[], decimal: '.' | ',', from: number): Table | null {
  const kinds = records.map(({ fields }) => recordKinds(fields, decimal));
  const isData = kinds.map(({ numbers, texts }, k) => records[k].line >= from && numbers >= 2 && texts <= numbers);
  const counts = new Map<number, number>();
  isData.forEach((data, k) => {
    if (data) counts.set(records[k].fields.length, (counts.get(records[k].fields.length) ?? 0) + kinds[k].numbers);
  });
  let width = 0;
  for (const [count, weight] of counts) if (weight > (counts.get(width) ?? 0)) width = count;
  if (width === 0) return null;
  const fits = isData.map((data, k) => data && records[k].fields.length === width);
  const start = fits.findIndex((fit, k) => fit && goesOn(records, kinds, fits, k));
  if (start < 0) return null;
  let score = 0;
  for (let k = start; k < records.length; k++) if (fits[k]) score += kinds[k].numbers - 2 * kinds[k].texts;
  return { start, width, score };
}

/** Most of the next few records that are not blank are of the table, too, and the next one is no header. */
function goesOn(
  records: readonly HeadRecord[],
  kinds: readonly RecordKinds[],
  fits: readonly boolean[],
  at: number,
): boolean {
  let seen = 0;
  let fitting = 0;
  for (let k = at; k < records.length && seen < 6; k++) {
    if (records[k].text.trim() === '') continue;
    if (seen === 1 && kinds[k].numbers === 0 && kinds[k].texts > 0) return !fits.some((fit, later) => fit && later > k);
    seen++;
    if (fits[k]) fitting++;
  }
  return fitting * 2 > seen;
}
