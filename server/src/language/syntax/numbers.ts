import { dateAt, matchAt, numberAt } from './characters';
import { fix, replaceBy, type LineReader, type Read } from './reader';

/** Digits, points and commas that belong together. */
const withCommaAt = /\d+(?:\.\d+)?(?:,\d+(?:\.\d+)?)+/y;

/** NUMBER as written. A comma between digits is always a finding: a comma is never a decimal sign here. */
export function readNumber(reader: LineReader): Read<string> | null {
  if (reader.atEnd()) return reader.expected('a number');
  const { text, at } = reader;
  if (matchAt(dateAt, text, at) !== null) {
    const date = reader.consume(at + 10);
    return reader.fail('unexpected-text', date.span, `\`${date.value}\` is read as a date; a number is due here`);
  }
  const withComma = matchAt(withCommaAt, text, at);
  if (withComma !== null) return decimalComma(reader, withComma[0]);
  const found = reader.take(numberAt);
  if (found === null) return noNumber(reader);
  const value = Number(found.value);
  if (!Number.isFinite(value) || Math.abs(value) > 1e300 || (value < 1e-300 && /[1-9]/.test(mantissa(found.value)))) {
    return reader.fail('unexpected-text', found.span, 'numbers lie between 1e-300 and 1e300');
  }
  return found;
}

function decimalComma(reader: LineReader, written: string): null {
  const span = { start: reader.at, end: reader.at + written.length };
  const commas = written.split(',').length - 1;
  // `1,234.5` groups thousands, `1,5` is a decimal comma; `1.5,3` can mean anything.
  const grouped = commas > 1 || /,\d+\./.test(written);
  const meant = grouped ? written.replace(/,/g, '') : written.replace(',', '.');
  const clear = !/\..*,/.test(written);
  const fixes = clear ? [replaceBy(span, meant)] : [];
  if (reader.inCall) fixes.push(fix('Separate by comma and blank', [{ span, text: written.replace(/,/g, ', ') }]));
  const message = grouped ? 'digits are not grouped by commas' : `the decimal sign is a point`;
  return reader.fail('decimal-comma', span, clear ? `${message}: write \`${meant}\`` : message, fixes);
}

function noNumber(reader: LineReader): null {
  const bare = matchAt(/\.\d+/y, reader.text, reader.at);
  if (bare === null) return reader.expected('a number');
  const span = { start: reader.at, end: reader.at + bare[0].length };
  const meant = `0${bare[0]}`;
  return reader.fail('unexpected-text', span, `a digit stands before the point: write \`${meant}\``, [
    replaceBy(span, meant),
  ]);
}

function mantissa(number: string): string {
  return number.split(/[eE]/)[0]!;
}

/** A whole number from 1, for segments, columns and counts of lines (`from` 0). */
export function readCount(reader: LineReader, what: string, from = 1): Read<number> | null {
  if (!reader.peek(numberAt)) return reader.expected(what);
  const number = readNumber(reader);
  if (number === null) return null;
  const value = Number(number.value);
  if (/^\d+$/.test(number.value) && value >= from && value <= 1e6) return { value, span: number.span };
  return reader.fail('unexpected-text', number.span, `\`${number.value}\` is not ${what}`);
}

/**
 * A number in its normal text: no exponent, no zeros in front or behind, all digits kept. Done on the text, so that no
 * digit is ever converted.
 */
export function normalNumber(written: string): string {
  const [digits, exponent] = written.split(/[eE]/) as [string, string | undefined];
  const [whole, part = ''] = digits.split('.') as [string, string | undefined];
  const all = whole + part;
  const point = whole.length + Number(exponent ?? 0);
  const significant = all.replace(/^0+/, '');
  if (significant === '') return '0';
  const shifted = point - (all.length - significant.length);
  const padded =
    shifted <= 0
      ? '0'.repeat(-shifted) + significant
      : significant + '0'.repeat(Math.max(0, shifted - significant.length));
  const split = Math.max(0, shifted);
  const before = padded.slice(0, split);
  const behind = padded.slice(split).replace(/0+$/, '');
  return (before === '' ? '0' : before) + (behind === '' ? '' : `.${behind}`);
}
