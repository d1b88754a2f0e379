/** A typed number: `.` or `,` as decimal sign, a true minus or a hyphen; null for anything else. */
export function numberFrom(text: string): number | null {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return /^-?\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : null;
}
