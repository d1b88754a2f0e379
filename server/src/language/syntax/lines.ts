/** One line of the text, in offsets of the text without its BOM. */
export interface SourceLine {
  readonly start: number;
  /** First character that is no blank. */
  readonly first: number;
  /** Behind the last character of the content: before trailing blanks, comment, line end. */
  readonly end: number;
  /** Where the comment starts; null: none. */
  readonly comment: number | null;
  /** Before the line end. */
  readonly lineEnd: number;
  /** Behind the line end. */
  readonly next: number;
  readonly kind: 'blank' | 'comment' | 'head' | 'clause';
}

/** Takes a text apart into lines; each character is looked at a bounded number of times. */
export function splitLines(text: string): readonly SourceLine[] {
  const lines: SourceLine[] = [];
  for (let start = 0; start < text.length;) {
    const feed = text.indexOf('\n', start);
    const next = feed < 0 ? text.length : feed + 1;
    const lineEnd = feed < 0 ? next : text[feed - 1] === '\r' && feed > start ? feed - 1 : feed;
    lines.push(splitLine(text, start, lineEnd, next));
    start = next;
  }
  return lines;
}

function splitLine(text: string, start: number, lineEnd: number, next: number): SourceLine {
  const comment = commentAt(text, start, lineEnd);
  const limit = comment ?? lineEnd;
  let first = start;
  while (first < limit && isBlank(text[first]!)) first++;
  let end = limit;
  while (end > first && isBlank(text[end - 1]!)) end--;
  const kind = first < end ? (first === start ? 'head' : 'clause') : comment === null ? 'blank' : 'comment';
  return { start, first, end, comment, lineEnd, next, kind };
}

/** A `#` outside a text. A text that is not closed hides what looks like a comment behind it. */
function commentAt(text: string, start: number, lineEnd: number): number | null {
  let inText = false;
  for (let i = start; i < lineEnd; i++) {
    const character = text[i];
    if (inText && character === '\\') i++;
    else if (character === '"') inText = !inText;
    else if (character === '#' && !inText) return i;
  }
  return null;
}

const blanks = new Set(' \t\r\u00a0\u2007\u2009\u202f');

function isBlank(character: string): boolean {
  return blanks.has(character);
}
