import { plain, prefixed, prefixes, typedSymbols } from '../../quantities/unitSymbols';
import { literal } from './pattern';

/** Pieces of patterns for what the grammar of the language builds on (language.md 1), in the syntax of Oniguruma. */
export const nameLetter = '[\\p{L}\\p{M}\\p{Nd}_]';
export const name = `\\p{L}${nameLetter}*`;
export const blank = '[ \\t\\x{a0}\\x{2007}\\x{2009}\\x{202f}]';
export const number = '\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?';
export const date = '\\d{4}-\\d{2}-\\d{2}(?!\\d)';
export const code = '[a-z0-9-]+';

/** One of several words or phrases, whole; the longest first. */
export function words(of: readonly string[]): string {
  const sorted = [...of].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  const spaced = sorted.map((phrase) => phrase.split(' ').map(literal).join(`${blank}+`));
  return `(?<!${nameLetter})(?:${spaced.join('|')})(?!${nameLetter})`;
}

/** The longest unit: one SYMBOL, or a product, or a quotient of those. */
export const unit = unitPattern();

function unitPattern(): string {
  const first = prefixes.map(([text]) => text).filter((text) => text !== '');
  // The same letters in other code points, and what a keyboard writes for them (unitSymbols.ts).
  const micro = first.map((text) => (text === 'µ' ? 'µ\\x{3bc}u' : text)).join('');
  const bases = prefixed.map(({ text }) => (text === 'K' ? '[K\\x{212a}]' : text));
  const words = [...plain.map(({ text }) => text), ...Object.keys(typedSymbols), '\u2103'].filter(
    (text) => text !== '%',
  );
  const alternatives = [`[${micro}]?(?:${bases.join('|')})`, ...words.map(literal)].join('|');
  const power = `(?:%|(?:${alternatives})(?!${nameLetter}))(?:\\^[-\u2212]?\\d+|\u207b?[\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+)?`;
  const below = `(?:${power}|\\(${power}(?:[·*]${power})*\\))`;
  return `(?:1/${below}|${power}(?:·${power})*(?:/${below})?)`;
}
