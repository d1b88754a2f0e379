const TAB = 9;
const LF = 10;
const BLANK = 32;
const QUOTE = 34;

/** A record that is longer than this is a quote that nobody closed, not a cell of many lines. */
export const longestRecord = 1 << 16;

export interface RecordEnd {
  /** Just after the line end of the record; -1: the bytes end before it does. */
  readonly end: number;
  /** False: a quote is not closed, or closed in the middle of a cell. */
  readonly wellFormed: boolean;
}

/**
 * Finds the end of the record that starts at `from`, whose cells may be quoted and hold separators, doubled quotes and
 * line ends (RFC 4180, section 2, blanks around quotes allowed). `separator` -1: runs of blanks and tabs.
 */
export function recordEnd(bytes: Uint8Array, from: number, to: number, separator: number): RecordEnd {
  const blank = (c: number): boolean => (c === BLANK || c === TAB) && c !== separator;
  let at = from;
  for (;;) {
    while (at < to && blank(bytes[at])) at++;
    if (at < to && bytes[at] === QUOTE) {
      at++;
      while (at < to && (bytes[at] !== QUOTE || bytes[at + 1] === QUOTE)) at += bytes[at] === QUOTE ? 2 : 1;
      if (at >= to) return { end: -1, wellFormed: to - from <= longestRecord };
      at++;
      const gap = at;
      while (at < to && blank(bytes[at])) at++;
      const c = bytes[at];
      if (at < to && c !== LF && c !== separator && !(separator < 0 && at > gap)) return { end: -1, wellFormed: false };
    } else {
      while (at < to && bytes[at] !== LF && bytes[at] !== separator && !(separator < 0 && blank(bytes[at]))) at++;
    }
    if (at >= to) return { end: -1, wellFormed: to - from <= longestRecord };
    if (bytes[at] === LF) return { end: at + 1, wellFormed: at - from <= longestRecord };
    if (separator >= 0) at++;
  }
}
