import type { Span } from '../../base/span';
import type { AllowClause, Atmosphere, ColumnChoice, Crucible } from '../model';
import type { Argument } from '../vocabulary/record';
import { encodings } from '../vocabulary/statements/reading';
import { signalWords } from '../vocabulary/signals';
import { readAmount, readRange, readWrittenUnit } from './amounts';
import { codeAt, numberAt } from './characters';
import type { ValueOf } from './clauseValues';
import { readCount } from './numbers';
import { fix, replaceBy, type LineReader, type Read } from './reader';
import { readBasis, readSegment, readSignal, readSignals } from './signals';
import { nearest } from '../nearest';
import { readChoice, readCode, readDate, readName, readNames, readReason, readText, readWords } from './texts';

type Reader<A extends Argument> = (reader: LineReader, argument: A, key: string) => ValueOf[A['form']] | null;
type Readers = { readonly [F in Argument['form']]: Reader<Extract<Argument, { form: F }>> };

const valueOf = <T>(read: Read<T> | null): T | null => (read === null ? null : read.value);

/** One reader for each form of argument that the vocabulary knows. */
const readers: Readers = {
  nothing: () => true,
  text: (reader) => valueOf(readText(reader, 'a text')),
  'text or none': (reader) => (reader.word('none') ? null : valueOf(readText(reader, 'a text, or `none`'))),
  choice: (reader, argument) => valueOf(readChoice(reader, argument.of)),
  amount: (reader, argument) =>
    valueOf(readAmount(reader, 'signed', argument.uncertain === true ? 'with ±' : 'without ±')),
  'amount or none': (reader) => (reader.word('none') ? 'none' : valueOf(readAmount(reader, 'signed'))),
  words: (reader) => readList(reader),
  crucible: (reader) => readCrucible(reader),
  atmosphere: (reader) => readAtmosphere(reader),
  date: (reader) => valueOf(readDate(reader)),
  calibrated: (reader) => readCalibrated(reader),
  signal: (reader, argument) => valueOf(readSignal(reader, argument.of)),
  signals: (reader, argument) => readSignals(reader, argument.of),
  count: (reader, argument) => readLines(reader, argument.unit),
  encoding: (reader) => readEncoding(reader),
  name: (reader) => readNoted(reader),
  names: (reader) => readNames(reader, 'a name')?.map((name) => name.value) ?? null,
  basis: (reader) => readBasis(reader),
  unit: (reader) => valueOf(readWrittenUnit(reader, 'without 1')),
  allow: (reader, _, key) => readAllow(reader, key),
  column: (reader, _, key) => readColumn(reader, key),
  ramp: (reader, _, key) => readRamp(reader, key),
  hold: (reader, _, key) => readHold(reader, key),
};

/**
 * Reads what stands behind a clause word. `key`: the token of the clause, `atmosphere#2`. Gives null, with a failure
 * noted at the reader, where it cannot be read; `text or none` gives null for `none` without one.
 */
export function readArgument<A extends Argument>(
  reader: LineReader,
  argument: A,
  key: string,
): ValueOf[A['form']] | null {
  // The table has the reader of each form under its name.
  return (readers[argument.form] as unknown as Reader<A>)(reader, argument, key);
}

function readList(reader: LineReader): readonly string[] | null {
  const list: string[] = [];
  do {
    const words = readWords(reader, 'the name of a substance');
    if (words === null) return null;
    list.push(words.value);
  } while (reader.sign(','));
  return list;
}

function readCrucible(reader: LineReader): Crucible | null {
  const words = readWords(reader, 'the material of the crucible, such as `alumina`');
  if (words === null) return null;
  const volume = reader.peek(numberAt) ? readAmount(reader, 'unsigned') : null;
  if (reader.problem !== null) return null;
  if (volume !== null) reader.note('volume', volume.span);
  const further: string[] = [];
  while (reader.sign(',')) {
    const more = readWords(reader, 'what else describes the crucible, such as `no lid`');
    if (more === null) return null;
    further.push(more.value);
  }
  return { words: words.value, volume: volume?.value ?? null, further };
}

function readAtmosphere(reader: LineReader): Atmosphere | null {
  const gases: { words: string; percent: number | null }[] = [];
  let without: Span | null = null;
  const parts: Partial<Record<'flow' | 'purity', Atmosphere['flow']>> = {};
  do {
    const words = readWords(reader, 'the name of a gas');
    if (words === null) return null;
    const amount = reader.peek(numberAt) ? readAmount(reader, 'unsigned') : null;
    if (reader.problem !== null) return null;
    const share = amount !== null && amount.value.unit?.text === '%' ? amount.value.value : null;
    gases.push({ words: words.value, percent: share });
    if (share === null) without = words.span;
    if (amount !== null && share === null) {
      parts.flow = amount.value;
      reader.note('flow', amount.span);
      break;
    }
  } while (reader.sign('+'));
  if (gases.length > 1 && without !== null) {
    return reader.fail('unexpected-text', without, 'each gas of a mixture has its share in %');
  }
  return readFlow(reader, gases, parts);
}

function readFlow(
  reader: LineReader,
  gases: Atmosphere['gases'],
  parts: Partial<Record<'flow' | 'purity', Atmosphere['flow']>>,
): Atmosphere | null {
  if (parts.flow === undefined && reader.peek(numberAt)) {
    const flow = readAmount(reader, 'unsigned');
    if (flow === null) return null;
    reader.note('flow', flow.span);
    parts.flow = flow.value;
  }
  if (reader.word('purity')) {
    const purity = readAmount(reader, 'unsigned');
    if (purity === null) return null;
    reader.note('purity', purity.span);
    parts.purity = purity.value;
  }
  const { flow = null, purity = null } = parts;
  if (!reader.word('from')) return { gases, flow, purity, from: null };
  if (!reader.peek(numberAt)) {
    const segment = readSegment(reader);
    return segment === null ? null : { gases, flow, purity, from: { segment } };
  }
  const time = readAmount(reader, 'unsigned');
  if (time === null) return null;
  reader.note('from', time.span);
  return { gases, flow, purity, from: { time: time.value } };
}

function readCalibrated(reader: LineReader): ValueOf['calibrated'] | null {
  const signal = readSignal(
    reader,
    signalWords((s) => s.read),
  );
  if (signal === null) return null;
  reader.note('signal', signal.span);
  const range = readRange(reader, 'range', 'the calibrated range, such as `150..660 °C`');
  if (range === null) return null;
  if (!reader.word('u')) return { signal: signal.value, range, u: null };
  const u = readAmount(reader, 'unsigned');
  if (u === null) return null;
  reader.note('u', u.span);
  return { signal: signal.value, range, u: u.value };
}

function readLines(reader: LineReader, unit: 'lines' | null): number | null {
  const count = readCount(reader, unit === null ? 'a whole number from 1' : 'a number of lines', unit === null ? 1 : 0);
  if (count === null || unit === null) return valueOf(count);
  if (reader.word('lines') || reader.word('line')) return count.value;
  const behind = { start: reader.last.end, end: reader.last.end };
  return reader.expected(
    'the word `lines`',
    reader.atEnd() ? [fix('Add `lines`', [{ span: behind, text: ' lines' }])] : [],
  );
}

function readEncoding(reader: LineReader): string | null {
  const name = reader.take(/[A-Za-z0-9-]+/y);
  if (name === null) return reader.expected(`an encoding: ${encodings.join(', ')}`);
  const known = encodings.find((encoding) => encoding === name.value.toLowerCase());
  if (known !== undefined) return known;
  const meant = nearest(name.value.toLowerCase(), encodings);
  return reader.fail(
    'unexpected-text',
    name.span,
    `\`${name.value}\` is none of the encodings ${encodings.join(', ')}`,
    meant.map((text) => replaceBy(name.span, text)),
  );
}

function readNoted(reader: LineReader): string | null {
  const name = readName(reader, 'a name');
  if (name === null) return null;
  reader.note('name', name.span);
  return name.value;
}

function readAllow(reader: LineReader, key: string): AllowClause | null {
  const code = reader.peek(codeAt)
    ? readCode(reader)
    : reader.expected('the code of a finding, such as `window-overlap`');
  if (code === null) return null;
  reader.note('code', code.span);
  const reason = readReason(reader);
  return reason === null ? null : { code: code.value, because: reason.value, token: key };
}

/** The signal has been read as the clause word: it is the key without its count. */
function readColumn(reader: LineReader, key: string): ColumnChoice | null {
  const signal = key.replace(/#\d+$/, '') as ColumnChoice['signal'];
  const column = readColumnPlace(reader);
  if (column === null) return null;
  if (!reader.word('in')) return { signal, column, unit: null, token: key };
  const unit = readWrittenUnit(reader, 'with 1');
  if (unit === null) return null;
  reader.note('unit', unit.span);
  return { signal, column, unit: unit.value, token: key };
}

function readColumnPlace(reader: LineReader): ColumnChoice['column'] | null {
  if (reader.word('column')) {
    const number = readCount(reader, 'the number of the column, counted from 1');
    return number === null ? null : { number: number.value };
  }
  if (!reader.peek(/"/y))
    return reader.expected('the column: `column 3`, or the text of its header in quotation marks');
  const header = readText(reader, 'the text of the header');
  return header === null ? null : { header: header.value };
}

function readRamp(reader: LineReader, key: string): ValueOf['ramp'] | null {
  const part = key.startsWith('cool') ? 'cool' : 'heat';
  const from = reader.peek(/[-\u2212\d]/y) ? readAmount(reader, 'signed') : null;
  if (reader.problem !== null) return null;
  if (from !== null) reader.note('from', from.span);
  if (!reader.word('to')) return reader.expected('`to` and the temperature at the end');
  const to = readAmount(reader, 'signed');
  if (to === null) return null;
  reader.note('to', to.span);
  if (!reader.word('at')) return reader.expected('`at` and the rate, such as `at 10 K/min`');
  const rate = readAmount(reader, 'unsigned');
  if (rate === null) return null;
  reader.note('rate', rate.span);
  return { part, from: from?.value ?? null, to: to.value, rate: rate.value, token: key };
}

function readHold(reader: LineReader, key: string): ValueOf['hold'] | null {
  const time = readAmount(reader, 'unsigned');
  if (time === null) return null;
  reader.note('time', time.span);
  return { part: 'hold', time: time.value, token: key };
}
