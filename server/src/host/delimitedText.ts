import { parse } from 'csv-parse/sync';
import type { DelimitedDialect, DelimitedRecords } from '../base/host';

/**
 * The full delimited-text parser: RFC 4180 quoting (quoted separators, doubled quotes, line ends inside quotes), blanks
 * around fields dropped, records of any length. Line ends are LF. Quotes that do not add up are read as plain characters.
 * The only file that knows the parsing library; loaded when a file first needs it.
 */
export function parseDelimited(text: string, dialect: DelimitedDialect): DelimitedRecords {
  const delimiter = dialect.delimiter ?? ' ';
  const prepared = dialect.delimiter === null ? singleBlanks(text) : text;
  try {
    return records(prepared, delimiter, true);
  } catch {
    return records(prepared, delimiter, false);
  }
}

function records(text: string, delimiter: string, quotes: boolean): DelimitedRecords {
  const parsed = parse(text, {
    bom: false,
    delimiter,
    quote: quotes ? '"' : false,
    escape: quotes ? '"' : false,
    record_delimiter: '\n',
    relax_column_count: true,
    relax_quotes: true,
    trim: true,
    info: true,
  }) as unknown as { record: string[]; info: { lines: number } }[];
  const lines: number[] = [];
  let line = 1;
  for (const { info } of parsed) {
    lines.push(line);
    line = info.lines + 1;
  }
  return { records: parsed.map(({ record }) => record), lines };
}

/** Runs of blanks and tabs outside quotes become one blank; none at the start or end of a line. */
function singleBlanks(text: string): string {
  let out = '';
  let quoted = false;
  let gap = false;
  let lineStart = true;
  for (let i = 0; i < text.length; i++) {
    const char = text[i];
    if (quoted) {
      out += char;
      if (char === '"' && text[i + 1] === '"') out += text[++i];
      else if (char === '"') quoted = false;
    } else if (char === ' ' || char === '\t') {
      gap = true;
    } else if (char === '\n') {
      out += char;
      gap = false;
      lineStart = true;
    } else {
      const fieldStart = gap || lineStart;
      if (gap && !lineStart) out += ' ';
      out += char;
      quoted = fieldStart && char === '"';
      gap = false;
      lineStart = false;
    }
  }
  return out;
}
