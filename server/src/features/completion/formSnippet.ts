import { inSnippet } from './offer';

/**
 * A form of the grammar as a snippet: its first alternative without what may be left out, a place to fill in for each
 * word in capitals. `step NAME [= A + B] PLACE` becomes `step ${1:NAME} ${2:PLACE}`.
 */
export function formSnippet(form: string): string {
  let count = 0;
  const place = (text: string): string => `\${${(count += 1)}:${inSnippet(text)}}`;
  return firstOf(form)
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => {
      if (/^".+"$/.test(word)) return `"${place(word.slice(1, -1))}"`;
      if (word === 'TEXT') return `"${place('text')}"`;
      if (/^[A-Z]+$/.test(word)) return place(word);
      return word.includes('|') ? choice(word, (count += 1)) : inSnippet(word);
    })
    .join(' ');
}

/** Without `[…]` and `{…}`, up to the first ` | `. */
function firstOf(form: string): string {
  let text = form;
  for (let before = ''; before !== text;) {
    before = text;
    text = text.replace(/\s*[[{][^[\]{}]*[\]}]/g, '');
  }
  return text.split(' | ')[0]!;
}

/** `up|down` as a list to choose from; `Q|none` as a place. */
function choice(word: string, count: number): string {
  const of = word.split('|');
  return of.every((one) => /^[a-z]+$/.test(one)) ? `\${${count}|${of.join(',')}|}` : `\${${count}:${of[0]!}}`;
}
