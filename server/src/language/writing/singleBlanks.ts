const pieces = /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*"|[ \t\r\u00a0\u2007\u2009\u202f]+/g;

/** Runs of blanks as one, none at the ends; texts in quotation marks stay as they are. */
export function singleBlanks(text: string): string {
  return text.replace(pieces, (piece) => (piece.startsWith('"') ? piece : ' ')).trim();
}
