import { cellText } from './cell';
import { exactPowers, nearestDouble } from './exactDecimal';
import type { RowBuffer } from './rowBuffer';

/** How rows are cut into cells, and where the wanted ones go. */
export interface RowLayout {
  /** ASCII code of the separator; -1: runs of blanks and tabs. */
  readonly separator: number;
  readonly decimal: '.' | ',';
  /** For each field, from 0, the column of the buffer or -1. Ends with the last wanted field. */
  readonly slots: Int8Array;
  /** Number of wanted fields. */
  readonly width: number;
}

const TAB = 9;
const LF = 10;
const BLANK = 32;
const QUOTE = 34;
const PLUS = 43;
const MINUS = 45;

/** Where a scan stopped: at the end, or before a line with a quote that needs the full parser. */
export interface ScanEnd {
  at: number;
  line: number;
  quoted: boolean;
}

/**
 * Reads whole lines of `bytes` from `from` to `to` (just after a line end) into `buffer`: no string is made for a cell
 * that is a plain number. Every cell comes out as `cellText` says, bit for bit. Lines without any content are no rows. A
 * cell in quotes is taken here when it is a plain number; any other quote at the start of a cell ends the scan before
 * its line.
 */
export function scanRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  firstLine: number,
  layout: RowLayout,
  buffer: RowBuffer,
  decode: (bytes: Uint8Array) => string,
): ScanEnd {
  const { separator, slots } = layout;
  const point = layout.decimal === '.' ? 46 : 44;
  const wanted = slots.length;
  const blanks = separator < 0;
  const blank1 = separator === BLANK ? -1 : BLANK;
  const blank2 = separator === TAB ? -1 : TAB;
  let columns = buffer.columns;
  let line = firstLine;
  let at = from;

  while (at < to) {
    const lineStart = at;
    if (buffer.rows === buffer.capacity) {
      buffer.grow();
      columns = buffer.columns;
    }
    const row = buffer.rows;
    let field = 0;
    let odd = false;
    let empty = 0;
    let c = bytes[at];
    while (c === blank1 || c === blank2) c = bytes[++at];

    // Cells up to the last wanted one, as long as all are plain numbers.
    while (field < wanted) {
      const slot = slots[field];
      if (slot < 0) {
        if (c === QUOTE) break;
        if (blanks) while (c !== BLANK && c !== TAB && c !== LF) c = bytes[++at];
        else while (c !== separator && c !== LF) c = bytes[++at];
      } else {
        const quoted = c === QUOTE;
        if (quoted) c = bytes[++at];
        const cell = at;
        let negative = false;
        if (c === MINUS) {
          negative = true;
          c = bytes[++at];
        } else if (c === PLUS) c = bytes[++at];
        // Digits 1 to 9, 10 to 18 and 19 as integers, which are fast and never stored apart; further ones only count.
        let upper = 0;
        let lower = 0;
        let last = 0;
        let digits = 0;
        let exponent = 0;
        const whole = at;
        let d = c - 48;
        while (d >= 0 && d <= 9) {
          if (digits < 9) {
            upper = (Math.imul(upper, 10) + d) | 0;
            if (upper !== 0) digits++;
          } else {
            if (digits < 18) lower = (Math.imul(lower, 10) + d) | 0;
            else if (digits === 18) last = d;
            digits++;
          }
          d = (c = bytes[++at]) - 48;
        }
        let places = at - whole;
        if (c === point) {
          const fraction = at + 1;
          d = (c = bytes[++at]) - 48;
          while (d >= 0 && d <= 9) {
            if (digits < 9) {
              upper = (Math.imul(upper, 10) + d) | 0;
              if (upper !== 0) digits++;
            } else {
              if (digits < 18) lower = (Math.imul(lower, 10) + d) | 0;
              else if (digits === 18) last = d;
              digits++;
            }
            d = (c = bytes[++at]) - 48;
          }
          exponent = fraction - at;
          places -= exponent;
        }
        if (places === 0) {
          if (at !== cell || quoted || (c !== separator && (c !== LF || blanks))) {
            odd = true;
            break;
          }
          empty++;
          columns[slot][row] = NaN;
          field++;
          if (c === LF) break;
          c = bytes[++at];
          while (c === blank1 || c === blank2) c = bytes[++at];
          continue;
        }
        if (c === 101 || c === 69) {
          c = bytes[++at];
          const down = c === MINUS;
          if (down || c === PLUS) c = bytes[++at];
          const start = at;
          let power = 0;
          d = c - 48;
          while (d >= 0 && d <= 9) {
            if (power < 100000) power = power * 10 + d;
            d = (c = bytes[++at]) - 48;
          }
          if (at === start) {
            odd = true;
            break;
          }
          exponent += down ? -power : power;
        }
        const end = at;
        if (quoted) {
          if (c !== QUOTE) {
            odd = true;
            break;
          }
          c = bytes[++at];
        }
        const gap = at;
        while (c === blank1 || c === blank2) c = bytes[++at];
        if (c !== LF && c !== separator && !(blanks && at > gap)) {
          odd = true;
          break;
        }
        let value: number;
        if (digits <= 15 && exponent >= -22 && exponent <= 22) {
          value = digits <= 9 ? upper : upper * exactPowers[digits - 9] + lower;
          value = exponent < 0 ? value / exactPowers[-exponent] : value * exactPowers[exponent];
        } else if (digits <= 19 && exponent >= -22 && exponent <= 0) {
          value = nearestDouble(upper, lower, last, digits, -exponent);
          if (value !== value) value = slowNumber(bytes, cell, end, negative);
        } else value = slowNumber(bytes, cell, end, negative);
        if (value === Infinity) {
          odd = true;
          break;
        }
        columns[slot][row] = negative ? -value : value;
      }
      field++;
      if (c === LF) break;
      if (!blanks) c = bytes[++at];
      while (c === blank1 || c === blank2) c = bytes[++at];
      if (blanks && c === LF) break;
    }

    if (field === wanted && !odd && empty < layout.width) {
      // The rest of the line is not wanted, but a quote there may hold a line end.
      let cellStart = true;
      while (c !== LF) {
        if (c === QUOTE && cellStart) break;
        if (c === separator || (blanks && (c === BLANK || c === TAB))) cellStart = true;
        else if (c !== BLANK && c !== TAB) cellStart = false;
        c = bytes[++at];
      }
      if (c === LF) {
        buffer.rows++;
        buffer.counts.empty += empty;
        buffer.textFrom = 0;
        at++;
        line++;
        continue;
      }
    }
    at = oddLine(bytes, lineStart, line, layout, buffer, decode);
    if (at < 0) return { at: lineStart, line, quoted: true };
    line++;
  }
  return { at, line, quoted: false };
}

/** Beyond what the arithmetic can prove: the language's own conversion, of the digits without the sign. */
function slowNumber(bytes: Uint8Array, from: number, to: number, negative: boolean): number {
  let text = '';
  for (let i = negative ? from + 1 : from; i < to; i++) text += bytes[i] === 44 ? '.' : String.fromCharCode(bytes[i]);
  return Number(text);
}

/**
 * Reads a line with a missing or odd cell. Returns the start of the next line, or -1 where a cell starts with a quote
 * (then nothing is taken).
 */
function oddLine(
  bytes: Uint8Array,
  from: number,
  line: number,
  layout: RowLayout,
  buffer: RowBuffer,
  decode: (bytes: Uint8Array) => string,
): number {
  let end = from;
  while (bytes[end] !== LF) end++;
  const fields = splitFields(decode(bytes.subarray(from, end)), layout.separator);
  if (fields.some((field) => field.startsWith('"'))) return -1;
  takeFields(fields, line, layout, buffer);
  return end + 1;
}

/** The fields of a line, quotes taken as plain characters. */
export function splitFields(text: string, separator: number): string[] {
  if (separator < 0) return text.split(/[ \t]+/).filter((field) => field !== '');
  return text.split(String.fromCharCode(separator)).map((field) => field.trim());
}

/** Takes one record as a row. A record of empty fields is no row. */
export function takeFields(fields: readonly string[], line: number, layout: RowLayout, buffer: RowBuffer): void {
  if (fields.every((field) => field.trim() === '')) return;
  if (buffer.rows === buffer.capacity) buffer.grow();
  const before = buffer.snapshot();
  let numbers = 0;
  let firstIsText = false;
  let first = true;
  layout.slots.forEach((slot, field) => {
    if (slot < 0) return;
    const cell = field < fields.length ? cellText(fields[field], layout.decimal) : 'empty';
    if (typeof cell === 'number') numbers++;
    else if (cell === 'empty') buffer.counts.empty++;
    else {
      buffer.badCell(line, field + 1, fields[field].trim());
      firstIsText ||= first;
    }
    first = false;
    buffer.columns[slot][buffer.rows] = typeof cell === 'number' ? cell : NaN;
  });
  buffer.endOddRow(line, numbers === 0 || firstIsText, before);
}
