import { wordsNeedNoQuotes } from '../syntax/texts';

/** TEXT: quotation marks around, `"` `\` line ends and tabs escaped. */
export function writeText(text: string): string {
  // A carriage return has no sign of its own; a line end is `\n`.
  const escaped = text
    .replace(/\r\n?/g, '\n')
    .replace(/["\\]/g, (character) => `\\${character}`)
    .replace(/\n/g, '\\n')
    .replace(/\t/g, '\\t');
  return `"${escaped}"`;
}

/** Words as they are where the grammar allows it, else a TEXT. */
export function writeWords(words: string): string {
  return wordsNeedNoQuotes(words) ? words : writeText(words);
}
