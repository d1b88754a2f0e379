import type { CrossingStatement, ResidueStatement } from '../../model';
import {
  baselineKinds,
  effectDirections,
  glassDefinitions,
  stepDefinitions,
} from '../../vocabulary/statements/evaluations';
import { signalWords } from '../../vocabulary/signals';
import { readAmount } from '../amounts';
import { nameAt } from '../characters';
import { readPlace } from '../places';
import type { LineReader } from '../reader';
import { readSegment, readSignal } from '../signals';
import { readName } from '../texts';
import type { HeadReader } from './head';

/** The name the statement defines: it stays defined, also where the rest of the line breaks. */
export function readDefined(reader: LineReader, due: string): string | null {
  const name = readName(reader, due);
  if (name === null) return null;
  reader.note('name', name.span);
  reader.defines = name.value;
  reader.identity = `${reader.identity ?? ''} ${name.value}`;
  return name.value;
}

/** `= A + B`: the parts of a sum; none where no `=` stands here. */
function readParts(reader: LineReader): readonly string[] | null | 'failed' {
  if (!reader.sign('=')) return null;
  const start = reader.last.start;
  const parts: string[] = [];
  do {
    if (!reader.peek(nameAt)) return reader.expected('a part of the sum, such as `First + Second`') ?? 'failed';
    const part = reader.name()!;
    reader.note(`sum/${parts.length}`, part.span);
    parts.push(part.value);
  } while (reader.sign('+'));
  reader.note('sum', reader.since(start));
  return parts.length > 1 ? parts : (reader.expected('`+` and the next part of the sum') ?? 'failed');
}

function readSummable(reader: LineReader, override: boolean) {
  const name = readDefined(reader, 'the name of the effect');
  if (name === null) return null;
  const sumOf = readParts(reader);
  if (sumOf === 'failed') return null;
  const place = readPlace(reader, !override && sumOf === null);
  return place === null ? null : { name, sumOf, place };
}

export const readStep: HeadReader = (reader, override) => {
  const head = readSummable(reader, override);
  if (head === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'step',
      ...head,
      by: clauses.choice('by', stepDefinitions),
      span: clauses.one('span', 'amount'),
      smooth: clauses.one('smooth', 'amount or none'),
      per: clauses.one('per', 'basis'),
      encloses: clauses.one('encloses', 'names') ?? [],
    }),
  };
};

export const readPeak: HeadReader = (reader, override) => {
  const head = readSummable(reader, override);
  if (head === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'peak',
      ...head,
      of: clauses.one('of', 'signal'),
      baseline: clauses.choice('baseline', baselineKinds),
      expect: clauses.choice('expect', effectDirections),
      span: clauses.one('span', 'amount'),
      smooth: clauses.one('smooth', 'amount or none'),
      per: clauses.one('per', 'basis'),
      encloses: clauses.one('encloses', 'names') ?? [],
    }),
  };
};

export const readGlass: HeadReader = (reader, override) => {
  const name = readDefined(reader, 'the name of the glass transition');
  const place = name === null ? null : readPlace(reader, !override);
  if (name === null || place === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'glass',
      name,
      place,
      by: clauses.choice('by', glassDefinitions),
      span: clauses.one('span', 'amount'),
      smooth: clauses.one('smooth', 'amount or none'),
    }),
  };
};

export const readOnset: HeadReader = (reader, override) => {
  const name = readDefined(reader, 'the name of the onset');
  const place = name === null ? null : readPlace(reader, !override);
  if (name === null || place === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'onset',
      name,
      place,
      of: clauses.one('of', 'signal'),
      span: clauses.one('span', 'amount'),
      smooth: clauses.one('smooth', 'amount or none'),
    }),
  };
};

export const readCrossing: HeadReader = (reader) => {
  const name = readDefined(reader, 'the name of the crossing');
  const signal =
    name === null
      ? null
      : readSignal(
          reader,
          signalWords(() => true),
        );
  if (name === null || signal === null) return null;
  reader.note('signal', signal.span);
  if (!reader.sign('=')) return reader.expected('`=` and the level, such as `= 95 %`');
  const level = readLevel(reader);
  const place = level === null ? null : readPlace(reader, false);
  if (level === null || place === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'crossing',
      name,
      signal: signal.value,
      level,
      place,
      way: clauses.flag(['rising', 'falling', 'either']),
      which: clauses.flag(['first', 'last']),
      per: clauses.one('per', 'basis'),
    }),
  };
};

function readLevel(reader: LineReader): CrossingStatement['level'] | null {
  reader.skipBlanks();
  const start = reader.at;
  const amount = readAmount(reader, 'signed');
  if (amount === null) return null;
  reader.note('level', amount.span);
  if (!reader.word('of')) return { amount: amount.value };
  const of = (['maximum', 'minimum'] as const).find((word) => reader.word(word));
  if (of === undefined) return reader.expected('`maximum` or `minimum`');
  reader.note('level', reader.since(start));
  if (amount.value.unit?.text === '%') return { percent: amount.value.value, of };
  return reader.fail('wrong-dimension', amount.span, `a share of the ${of} is written in %, such as \`10 % of ${of}\``);
}

export const readResidue: HeadReader = (reader) => {
  const name = readDefined(reader, 'the name of the residue');
  if (name === null) return null;
  if (!reader.word('at')) return reader.expected('`at` and a place, such as `at end of hold 1` or `at 950 °C`');
  const at = readReadingPoint(reader);
  if (at === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'residue',
      name,
      at,
      over: clauses.one('over', 'amount'),
      per: clauses.one('per', 'basis'),
    }),
  };
};

function readReadingPoint(reader: LineReader): ResidueStatement['at'] | null {
  reader.skipBlanks();
  const start = reader.at;
  if (reader.word('end')) {
    if (!reader.word('of')) return reader.expected('`of` and a segment: `end of hold 1`');
    const segment = readSegment(reader);
    reader.note('at', reader.since(start));
    return segment === null ? null : { endOf: segment };
  }
  if (!reader.peek(/[-\u2212\d]/y)) return reader.expected('`end of hold 1`, or a temperature or time');
  const amount = readAmount(reader, 'signed');
  if (amount === null) return null;
  reader.note('at', amount.span);
  const segment = reader.word('in') ? readSegment(reader) : null;
  return reader.problem === null ? { amount: amount.value, segment } : null;
}
