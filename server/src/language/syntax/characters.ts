/** Sticky patterns of the tokens. Nothing here reaches over the end of a line. */

/** Blanks also in the widths that copied text brings along: no-break, figure, thin and narrow no-break space. */
export const blanksAt = /[ \t\r\u00a0\u2007\u2009\u202f]+/y;
export const nameAt = /\p{L}[\p{L}\p{M}\p{Nd}_]*/uy;
/** A date is tried before a number; digits that go on make it none. */
export const dateAt = /\d{4}-\d{2}-\d{2}(?!\d)/y;
export const numberAt = /\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
export const textAt = /"[^"\\\r\n]*(?:\\[^\r\n][^"\\\r\n]*)*"/y;
export const codeAt = /[a-z0-9-]+/y;
/** The digest of an approval. */
export const digestAt = /[0-9a-f]{32}/y;
export const minusAt = /[-\u2212]/y;
/** What is pointed at where something else was due: a word, a number, a text, or one character. */
export const anythingAt = /[\p{L}\p{M}\p{Nd}_]+(?:\.\d+)?|"(?:[^"\\\r\n]|\\[^\r\n])*"?|[^\r\n]/uy;
/** What was meant as a unit. */
export const unitLikeAt = /[\p{L}\p{M}\p{Nd}°%·^⁰-⁹¹²³⁻\u2103]+(?:\/[\p{L}\p{M}\p{Nd}°%·*^⁰-⁹¹²³⁻()\u2103]+)*/uy;

export function matchAt(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** One code point for each character that has several: names are compared in this form. */
export function normalName(name: string): string {
  return name.normalize('NFC').replace(/\u03bc/g, '\u00b5');
}

const wholeName = /^\p{L}[\p{L}\p{M}\p{Nd}_]*$/u;

export function isName(text: string): boolean {
  return wholeName.test(text);
}
