/** `2 warnings`, `1 gloss`; `null` for none, so that a list can leave it out. */
export function plural(count: number, one: string, many = `${one}s`): string | null {
  return count === 0 ? null : `${count} ${count === 1 ? one : many}`;
}
