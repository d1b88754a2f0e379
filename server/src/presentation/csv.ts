/**
 * Comma-separated values after RFC 4180: CRLF after every record, fields with a comma, quote or line end in double
 * quotes, quotes doubled. `null` is an empty field.
 *
 * A text that a spreadsheet would take for a formula (`=`, `+`, `-`, `@`, a tab or a line end first) gets an apostrophe before
 * it: names of files and authors come from anybody. Numbers, also those given as text, stay as they are. The characters are
 * those that OWASP names under "CSV Injection" (from memory).
 */
export function csv(records: readonly (readonly (string | number | null)[])[]): string {
  return records.map((record) => record.map(field).join(',') + '\r\n').join('');
}

function field(value: string | number | null): string {
  if (value === null) return '';
  const text = typeof value === 'string' && isFormula(value) ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A number may have its uncertainty and unit behind it: `-12.9 ± 1.6 %`. */
const number = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?: (?:[^\s=+@|!"'&,;()]|\/\(|\))+)*$/i;

function isFormula(text: string): boolean {
  return /^[=+\-@\t\r\n]/.test(text) && !number.test(text);
}
