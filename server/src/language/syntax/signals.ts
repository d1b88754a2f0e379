import { nearest } from '../nearest';
import type { Basis, SegmentName, SignalName } from '../model';
import { bases } from '../vocabulary/bases';
import { signals } from '../vocabulary/signals';
import { readCount, readNumber } from './numbers';
import { replaceBy, type LineReader, type Read } from './reader';
import { readName } from './texts';

/** A signal; `of`: the words that may stand here. */
export function readSignal(reader: LineReader, of: readonly string[]): Read<SignalName> | null {
  reader.skipBlanks();
  const start = reader.at;
  const word = reader.peekName();
  if (word === null || !of.includes(word)) return noSignal(reader, word, of);
  reader.name();
  switch (word) {
    case 'ion':
    case 'absorbance': {
      if (!reader.sign('(')) return reader.expected(`the channel in brackets, \`${word}(18)\``);
      const channel = readNumber(reader);
      if (channel === null) return null;
      if (!reader.sign(')')) return reader.expected('a closing bracket');
      return { value: channelOf(word, Number(channel.value)), span: reader.since(start) };
    }
    case 'time':
    case 'temperature':
    case 'mass':
    case 'rate':
    case 'heatflow':
      return { value: word, span: reader.since(start) };
    default:
      return null;
  }
}

function channelOf(word: 'ion' | 'absorbance', channel: number): SignalName {
  return word === 'ion' ? `ion(${channel})` : `absorbance(${channel})`;
}

function noSignal(reader: LineReader, word: string | null, of: readonly string[]): null {
  const known = signals.find((signal) => signal.word === word);
  const examples = signals.filter((signal) => of.includes(signal.word)).map((signal) => `\`${signal.example}\``);
  if (known !== undefined) {
    const found = reader.found();
    return reader.fail(
      'unexpected-text',
      found.span,
      `\`${known.word}\` cannot stand here; due is one of ${examples.join(', ')}`,
    );
  }
  const meant = word === null ? undefined : nearest(word, of)[0];
  const fixes = meant === undefined ? [] : [replaceBy(reader.found().span, meant)];
  return reader.expected(`a signal: ${examples.join(', ')}`, fixes);
}

export function readSignals(reader: LineReader, of: readonly string[]): readonly SignalName[] | null {
  const found: SignalName[] = [];
  do {
    const signal = readSignal(reader, of);
    if (signal === null) return null;
    if (found.includes(signal.value)) {
      return reader.fail('unexpected-text', signal.span, `\`${signal.value}\` is named twice`);
    }
    found.push(signal.value);
  } while (reader.sign(','));
  return found;
}

export const directions = ['heating', 'cooling', 'hold'] as const;

/** `heating 1`. Notes the token `segment`. */
export function readSegment(reader: LineReader): SegmentName | null {
  reader.skipBlanks();
  const start = reader.at;
  const word = reader.peekName();
  const direction = directions.find((known) => known === word);
  if (direction === undefined) {
    const meant = word === null ? undefined : nearest(word, directions)[0];
    const fixes = meant === undefined ? [] : [replaceBy(reader.found().span, meant)];
    return reader.expected('a segment: `heating 1`, `cooling 1`, `hold 1`', fixes);
  }
  reader.name();
  const index = readCount(reader, `the number of the ${direction}, counted from 1`);
  if (index === null) return null;
  reader.note('segment', reader.since(start));
  return { direction, index: index.value };
}

/** Behind `per`. */
export function readBasis(reader: LineReader): Basis | null {
  reader.skipBlanks();
  const start = reader.at;
  const rest = (): string => reader.text.slice(start, reader.end).trim().replace(/\s+/g, ' ');
  const record = bases.find((basis) => rest() === basis.words || rest().startsWith(`${basis.words} `));
  if (record === undefined) {
    const examples = bases.map((basis) => `\`${basis.example}\``).join(', ');
    const meant = nearest(
      rest(),
      bases.filter((basis) => basis.names === null).map((basis) => basis.words),
    )[0];
    const fixes = meant === undefined ? [] : [replaceBy({ start, end: reader.end }, meant)];
    return reader.expected(`a basis: ${examples}`, fixes);
  }
  for (const word of record.words.split(' ')) reader.word(word);
  if (record.of !== 'dried mass' && record.of !== 'ignited mass') return { of: record.of };
  const name = readName(reader, record.names === 'step' ? 'the step after which it is dry' : 'the residue');
  if (name === null) return null;
  reader.note('name', name.span);
  return record.of === 'dried mass'
    ? { of: 'dried mass', step: name.value }
    : { of: 'ignited mass', residue: name.value };
}
