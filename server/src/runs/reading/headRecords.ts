import { cellText } from './cell';

/** One record of the first part of a file. */
export interface HeadRecord {
  /** 1-based line on which it starts. */
  readonly line: number;
  /** Lines it covers: more than one where a quoted cell holds line ends. */
  readonly lines: number;
  readonly text: string;
  readonly fields: readonly string[];
}

/** A record whose quoted cell goes on for more lines than this has a stray quote. */
const mostLines = 6;

/** Cuts the first lines of a file into records and fields. `null` separates by runs of blanks. */
export function headRecords(lines: readonly string[], delimiter: string | null): HeadRecord[] {
  const records: HeadRecord[] = [];
  for (let at = 0; at < lines.length;) {
    let text = lines[at];
    let count = 1;
    let fields = text.includes('"') ? splitQuoted(text, delimiter) : splitPlain(text, delimiter);
    while (fields === null && count < mostLines && at + count < lines.length) {
      text += `\n${lines[at + count++]}`;
      fields = splitQuoted(text, delimiter);
    }
    if (fields === null) {
      text = lines[at];
      count = 1;
      fields = (delimiter === null ? text.trim().split(/[ \t]+/) : text.split(delimiter)).map((field) => field.trim());
    }
    records.push({ line: at + 1, lines: count, text, fields });
    at += count;
  }
  return records;
}

/** The same as `splitQuoted` where there is no quote. */
function splitPlain(text: string, delimiter: string | null): string[] {
  const fields = delimiter === null ? text.replace(/^[ \t]+|[ \t]+$/g, '').split(/[ \t]+/) : text.split(delimiter);
  for (let k = 0; k < fields.length; k++) fields[k] = fields[k].trim();
  return fields;
}

/** The fields of one record without quotes and outer blanks; null: a quote is open at the end. */
function splitQuoted(text: string, delimiter: string | null): string[] | null {
  const separates = (char: string): boolean =>
    delimiter === null ? char === ' ' || char === '\t' : char === delimiter;
  const fields: string[] = [];
  let at = 0;
  for (;;) {
    while (at < text.length && (text[at] === ' ' || text[at] === '\t') && text[at] !== delimiter) at++;
    if (at >= text.length && delimiter === null && fields.length > 0) return fields;
    let field = '';
    if (text[at] === '"') {
      at++;
      for (; at < text.length; at++) {
        if (text[at] !== '"') field += text[at];
        else if (text[at + 1] === '"') field += text[at++];
        else break;
      }
      if (at >= text.length) return null;
      at++;
      while (at < text.length && !separates(text[at])) field += text[at++];
    } else {
      const from = at;
      while (at < text.length && !separates(text[at])) at++;
      field = text.slice(from, at);
    }
    fields.push(field.trim());
    if (at >= text.length) return fields;
    at++;
  }
}

export interface RecordKinds {
  readonly numbers: number;
  readonly texts: number;
}

/** How many fields of a record are numbers, and how many are something else that is not empty. */
export function recordKinds(fields: readonly string[], decimal: '.' | ','): RecordKinds {
  let numbers = 0;
  let texts = 0;
  for (const field of fields) {
    const cell = cellText(field, decimal);
    if (typeof cell === 'number') numbers++;
    else if (cell === 'not a number' && !noValue(field)) texts++;
  }
  return { numbers, texts };
}

/** Marks that instruments and spreadsheets write for a missing value. */
function noValue(field: string): boolean {
  return /^(?:#n\/?[av]\w*|nan|n\/?a|null|-+|\*+|#[a-z/0]+!?)$/i.test(field.trim());
}
