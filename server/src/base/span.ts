/** A half-open stretch of text in UTF-16 offsets from the start of the file (a BOM counts as nothing). */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** The smallest span that holds both. */
export function cover(a: Span, b: Span): Span {
  return { start: Math.min(a.start, b.start), end: Math.max(a.end, b.end) };
}
