import { matchUnit } from '../../quantities/matchUnit';
import { parseUnit } from '../../quantities/parseUnit';
import { sameDimension } from '../../quantities/dimension';
import type { Unit } from '../../quantities/unit';
import type { Amount, RangeOf } from '../model';
import { isName, matchAt, minusAt, nameAt, normalName, numberAt, unitLikeAt } from './characters';
import { readNumber } from './numbers';
import { fix, replaceBy, type LineReader, type Read } from './reader';

/** Words that may follow a number without a unit; what else stands there was meant as a unit. */
const connecting = new Set(
  'in as of to at on u from within purity line lines because around end rising falling first last'.split(' '),
);

/**
 * A quantity: NUMBER [UNIT] [± NUMBER [UNIT]]; the last unit serves both.
 * `sign`: whether a minus may stand before it. `uncertain`: whether ± may, since where nothing would be made of it, it
 * must not be passed over.
 */
export function readAmount(
  reader: LineReader,
  sign: 'signed' | 'unsigned',
  uncertain: 'with ±' | 'without ±' = 'without ±',
): Read<Amount> | null {
  reader.skipBlanks();
  const start = reader.at;
  const minus = sign === 'signed' && reader.take(minusAt) !== null ? '-' : '';
  const number = readNumber(reader);
  if (number === null) return null;
  const unit = readUnit(reader);
  if (unit === 'failed') return null;
  const digits = minus + number.value;
  const value = Number(digits);
  const behind = reader.last.end;
  if (!reader.sign('±') && !reader.sign('+/-')) {
    const text = unit === null ? digits : `${digits} ${unit.text}`;
    return { value: { value, unit, u: null, text }, span: reader.since(start) };
  }
  if (uncertain === 'without ±') {
    const rest = { start: behind, end: reader.end };
    return reader.fail('unexpected-text', reader.last, 'no uncertainty can be stated here; a tolerance is a range', [
      fix('Remove the uncertainty', [{ span: rest, text: '' }]),
    ]);
  }
  return readUncertainty(reader, start, { digits, value, unit });
}

function readUncertainty(
  reader: LineReader,
  start: number,
  of: { readonly digits: string; readonly value: number; readonly unit: Unit | null },
): Read<Amount> | null {
  const sign = reader.last.start;
  const number = readNumber(reader);
  if (number === null) return null;
  const behind = reader.last.end;
  const own = readUnit(reader);
  if (own === 'failed') return null;
  const span = reader.since(start);
  if (own === null && of.unit !== null) {
    return reader.fail(
      'unit-missing',
      { start: number.span.start, end: behind },
      'the uncertainty behind ± has no unit',
      [fix(`Add ${of.unit.text}`, [{ span: { start: behind, end: behind }, text: ` ${of.unit.text}` }])],
    );
  }
  const unit = of.unit ?? own;
  const u = Number(number.value);
  if (unit === null || own === null) {
    return { value: { value: of.value, unit: null, u, text: `${of.digits} ± ${number.value}` }, span };
  }
  if (!sameDimension(unit.dimension, own.dimension)) {
    return reader.fail(
      'wrong-dimension',
      { start: sign, end: span.end },
      `what stands behind ± is a standard uncertainty in the unit of the value (${unit.text}), not in ${own.text}`,
    );
  }
  const shared = of.unit === null || of.unit.text === own.text;
  const text = shared
    ? `${of.digits} ± ${number.value} ${own.text}`
    : `${of.digits} ${unit.text} ± ${number.value} ${own.text}`;
  // Equal units leave the number as written; a quotient of factors would not be exact.
  return {
    value: { value: of.value, unit, u: unit.factor === own.factor ? u : (u * own.factor) / unit.factor, text },
    span,
  };
}

/** The unit right behind a number, or null where none is meant. */
export function readUnit(reader: LineReader): Unit | null | 'failed' {
  if (reader.atEnd()) return null;
  const { text, at } = reader;
  const found = matchUnit(text, at);
  if (found !== null) {
    if (found.failure === null) {
      reader.consume(found.end);
      return found.unit;
    }
    const span = { start: found.failure.offset, end: found.failure.offset + found.failure.length };
    const whole = { start: at, end: found.end };
    const fixes = found.failure.suggestion === null ? [] : [replaceBy(whole, found.failure.suggestion)];
    reader.fail('unknown-unit', fixes.length > 0 ? whole : span, found.failure.message, fixes);
    return 'failed';
  }
  const like = matchAt(unitLikeAt, text, at);
  if (like === null || /^[\p{Nd}·^/-]/u.test(like[0])) return null;
  const word = matchAt(nameAt, text, at);
  if (word !== null && connecting.has(normalName(word[0]))) return null;
  return failUnit(reader, like[0]);
}

function failUnit(reader: LineReader, written: string): 'failed' {
  const span = { start: reader.at, end: reader.at + written.length };
  const parsed = parseUnit(written);
  const message = parsed.ok ? `\`${written}\` is no unit here` : parsed.failure.message;
  const suggestion = parsed.ok ? null : parsed.failure.suggestion;
  const fixes = suggestion === null ? [] : [replaceBy(span, suggestion)];
  if (reader.inExpression && isName(written))
    fixes.push(fix(`Multiply by ${written}`, [{ span, text: `* ${written}` }]));
  reader.fail('unknown-unit', span, message, fixes);
  return 'failed';
}

/** UNIT where one is due: behind `show` and `in`. `one`: also `1`. */
export function readWrittenUnit(reader: LineReader, one: 'with 1' | 'without 1'): Read<Unit> | null {
  if (reader.atEnd()) return reader.expected('a unit, such as `mg`');
  const { text, at } = reader;
  const found = matchUnit(text, at);
  if (found !== null) {
    const unit = readUnit(reader);
    return unit === null || unit === 'failed' ? null : { value: unit, span: reader.since(at) };
  }
  const written = matchAt(/[^\s#]+/y, text, at)![0];
  const parsed = parseUnit(written, one);
  if (!parsed.ok) {
    failUnit(reader, written);
    return null;
  }
  return { value: parsed.value, span: reader.consume(at + written.length).span };
}

/**
 * Two ends joined by `..`; the last unit serves both. Notes the tokens `.from` and `.to` below `token`, and `token`
 * itself. A hyphen between the ends is named as such.
 */
export function readRange(reader: LineReader, token: string, due: string): RangeOf | null {
  reader.skipBlanks();
  const start = reader.at;
  if (!reader.peek(minusAt) && !reader.peek(numberAt) && !reader.peek(/\.\d/y)) return reader.expected(due);
  const from = readEnd(reader);
  if (from === null) return null;
  const fromSpan = reader.since(start);
  if (!reader.sign('..')) return noTwoDots(reader, start, due);
  reader.skipBlanks();
  const toStart = reader.at;
  const to = readEnd(reader);
  if (to === null) return null;
  const unit = from.unit ?? to.unit;
  reader.note(token, reader.since(start));
  reader.note(`${token}.from`, fromSpan);
  reader.note(`${token}.to`, reader.since(toStart));
  return { from: amountOf(from.digits, unit), to: amountOf(to.digits, to.unit) };
}

function amountOf(digits: string, unit: Unit | null): Amount {
  return { value: Number(digits), unit, u: null, text: unit === null ? digits : `${digits} ${unit.text}` };
}

function readEnd(reader: LineReader): { readonly digits: string; readonly unit: Unit | null } | null {
  const minus = reader.take(minusAt) !== null ? '-' : '';
  const number = readNumber(reader);
  if (number === null) return null;
  const unit = readUnit(reader);
  return unit === 'failed' ? null : { digits: minus + number.value, unit };
}

const hyphens = /(?:[-\u2010-\u2015\u2212]|\u2026|to\b)(?=[ \t]*[-\u2212]?\d)/y;

function noTwoDots(reader: LineReader, start: number, due: string): null {
  const behind = reader.last.end;
  const hyphen = reader.take(hyphens);
  if (hyphen === null) return reader.expected(`\`..\` and the other end: ${due}`);
  reader.skipBlanks();
  const joint = { start: behind, end: reader.at };
  // The finding covers the whole range where it can be read on.
  readEnd(reader);
  return reader.fail(
    'range-with-hyphen',
    reader.problem === null ? reader.since(start) : { start, end: joint.end },
    `the two ends of a range are joined by \`..\`, since \`${hyphen.value}\` is also read otherwise`,
    [fix('Join the ends by `..`', [{ span: joint, text: '..' }])],
  );
}
