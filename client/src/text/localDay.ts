/** A day as people write it where they are, `2026-10-02`. */
export function localDay(time: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
}
