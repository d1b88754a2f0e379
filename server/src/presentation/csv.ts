/**
 * Comma-separated values after RFC 4180: CRLF after every record, fields with a comma, quote or line end in double
 * quotes, quotes doubled. `null` is an empty field.
 */
export function csv(records: readonly (readonly (string | number | null)[])[]): string {
  return records.map((record) => record.map(field).join(',') + '\r\n').join('');
}

function field(value: string | number | null): string {
  if (value === null) return '';
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
