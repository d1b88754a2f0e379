import { nearest } from '../nearest';
import { codeAt, dateAt, digestAt, isName, matchAt, nameAt, normalName, numberAt, textAt } from './characters';
import { fix, replaceBy, type LineReader, type Read } from './reader';

/** TEXT with its escapes resolved. */
export function readText(reader: LineReader, due: string): Read<string> | null {
  if (reader.atEnd()) return reader.expected(due);
  const { text, at, end } = reader;
  if (text[at] !== '"') return notQuoted(reader, due);
  const whole = matchAt(textAt, text, at);
  if (whole === null || at + whole[0].length > end) {
    return reader.fail(
      'unexpected-text',
      { start: at, end },
      'the text is not closed: its second quotation mark is missing',
      [fix('Close the text', [{ span: { start: end, end }, text: '"' }])],
    );
  }
  const escape = /\\(?!["\\nt])/.exec(whole[0].replace(/\\["\\nt]/g, '  '));
  if (escape !== null) {
    const span = { start: at + escape.index, end: at + escape.index + 2 };
    const written = text.slice(span.start, span.end);
    return reader.fail(
      'unexpected-text',
      span,
      `\`${written}\` is no sign of a text; a backslash is written twice, and paths have \`/\``,
      [replaceBy(span, `\\${written}`)],
    );
  }
  const read = reader.consume(at + whole[0].length);
  return { value: unescape(read.value.slice(1, -1)), span: read.span };
}

function notQuoted(reader: LineReader, due: string): null {
  const rest = { start: reader.at, end: reader.end };
  const written = reader.text.slice(rest.start, rest.end);
  const quoted = `"${written.replace(/["\\]/g, (c) => `\\${c}`)}"`;
  const whole = /["]/.test(written) ? [] : [replaceBy(rest, quoted)];
  return reader.expected(`${due}, in quotation marks`, whole);
}

function unescape(text: string): string {
  return text.replace(/\\(.)/g, (_, character: string) =>
    character === 'n' ? '\n' : character === 't' ? '\t' : character,
  );
}

/** A reason: a text that says something. */
export function readReason(reader: LineReader): Read<string> | null {
  if (!reader.word('because')) {
    const behind = { start: reader.last.end, end: reader.last.end };
    const add = reader.atEnd() ? [fix('Add a reason to be written', [{ span: behind, text: ' because ""' }])] : [];
    return reader.expected('the reason, `because "…"`', add);
  }
  const reason = readText(reader, 'the reason');
  if (reason === null || reason.value.trim() !== '') return reason;
  return reader.fail('unexpected-text', reason.span, 'the reason is empty');
}

/** NAME { NAME } or TEXT: ends before a number, a comma, `from`, and `purity` with its number. */
export function readWords(reader: LineReader, due: string): Read<string> | null {
  reader.skipBlanks();
  const start = reader.at;
  if (reader.text[reader.at] === '"') return readText(reader, due);
  const words: string[] = [];
  for (;;) {
    const word = reader.peekName();
    if (word === null || word === 'from' || (word === 'purity' && words.length > 0 && numberFollows(reader))) break;
    reader.name();
    words.push(word);
  }
  return words.length === 0 ? reader.expected(due) : { value: words.join(' '), span: reader.since(start) };
}

const purityNumber = /purity[ \t\u00a0]+\d/y;

function numberFollows(reader: LineReader): boolean {
  return reader.peek(purityNumber);
}

/** Whether words can be written without quotation marks and are then read back as the same. */
export function wordsNeedNoQuotes(words: string): boolean {
  return words
    .split(' ')
    .every((word) => isName(word) && word !== 'from' && word !== 'purity' && normalName(word) === word);
}

export function readName(reader: LineReader, due: string): Read<string> | null {
  const name = reader.name();
  if (name !== null) return name;
  return reader.expected(`${due}: a letter, then letters, digits and _`);
}

export function readNames(reader: LineReader, due: string): readonly Read<string>[] | null {
  const names: Read<string>[] = [];
  do {
    const name = readName(reader, due);
    if (name === null) return null;
    reader.note(names.length === 0 ? 'name' : `name#${names.length + 1}`, name.span);
    names.push(name);
  } while (reader.sign(','));
  return names;
}

export function readCode(reader: LineReader): Read<string> | null {
  const code = reader.take(codeAt);
  if (code === null || reader.peekDirectly(nameAt) || reader.peekDirectly(numberAt)) {
    return code === null
      ? reader.expected('the code of a finding, such as `window-overlap`')
      : reader.fail('unexpected-text', reader.whole(code.span), 'codes of findings have small letters, digits and -');
  }
  return code;
}

/** The digest of an approval: 32 hex digits, small letters. */
export function readDigest(reader: LineReader): Read<string> | null {
  const digest = reader.take(digestAt);
  if (digest !== null && !reader.peekDirectly(/[\p{L}\p{Nd}]/uy)) return digest;
  const due = 'the digest, 32 of `0` to `9` and `a` to `f`, as `thermogloss approve` writes it';
  return digest === null
    ? reader.expected(due)
    : reader.fail('unexpected-text', reader.whole(digest.span), `what stands here is longer than ${due}`);
}

/** A day of the calendar. */
export function readDate(reader: LineReader): Read<string> | null {
  const date = reader.take(dateAt);
  if (date === null) return reader.expected('a day, such as `2026-10-02`');
  const [year, month, day] = date.value.split('-').map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  if (day >= 1 && day <= days) return date;
  return reader.fail('unexpected-text', date.span, `\`${date.value}\` is no day of the calendar`);
}

/** One of several fixed words or pairs of words. */
export function readChoice<T extends string>(reader: LineReader, of: readonly T[]): Read<T> | null {
  reader.skipBlanks();
  const start = reader.at;
  const words: string[] = [];
  while (reader.peekName() !== null && words.length < 2) {
    const longer = [...words, reader.peekName()!].join(' ');
    if (!of.some((choice) => choice === longer || choice.startsWith(`${longer} `))) break;
    reader.name();
    words.push(longer.split(' ').pop()!);
  }
  const chosen = of.find((choice) => choice === words.join(' '));
  if (chosen !== undefined) return { value: chosen, span: reader.since(start) };
  return notChosen(reader, start, of);
}

function notChosen(reader: LineReader, start: number, of: readonly string[]): null {
  const choices = of.map((choice) => `\`${choice}\``).join(', ');
  const rest = reader.text.slice(start, reader.end);
  const meant = nearest(rest.replace(/\s+/g, ' '), of)[0];
  const fixes = meant === undefined ? [] : [replaceBy({ start, end: reader.end }, meant)];
  return reader.expected(`one of ${choices}`, fixes);
}
