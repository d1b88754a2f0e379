import type { Atmosphere, Common } from '../../model';
import type { Clauses, ValueOf } from '../clauseValues';
import type { LineReader, Read } from '../reader';
import { readText } from '../texts';
import type { HeadReader } from './head';

function readFile(reader: LineReader, due: string): Read<string> | null {
  const file = readText(reader, due);
  if (file === null) return null;
  reader.note('file', file.span);
  reader.identity = `${reader.identity ?? ''} ${JSON.stringify(file.value)}`;
  if (file.value.trim() !== '') return file;
  return reader.fail('unexpected-text', file.span, 'the name of the file is empty');
}

export const readRun: HeadReader = (reader) => {
  const file = readFile(reader, 'the file of the run');
  if (file === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'run',
      file: file.value,
      sample: clauses.one('sample', 'text or none'),
      sampleIsNone: clauses.has('sample') && clauses.one('sample', 'text or none') === null,
      mass: clauses.one('mass', 'amount'),
      crucible: clauses.one('crucible', 'crucible'),
      atmospheres: atmospheres(clauses),
      contains: clauses.one('contains', 'words') ?? [],
      endothermic: clauses.choice('endothermic', ['up', 'down']),
      operator: clauses.one('operator', 'text'),
      evaluator: clauses.one('evaluator', 'text'),
      hazards: clauses.texts('hazard'),
      measured: clauses.one('measured', 'date'),
      rate: clauses.one('rate', 'amount'),
      calibrated: clauses.all('calibrated', 'calibrated'),
    }),
  };
};

function atmospheres(clauses: Clauses): readonly Atmosphere[] {
  return clauses.all('atmosphere', 'atmosphere');
}

export const readJoin: HeadReader = (reader) => {
  const file = readFile(reader, 'the file with further signals');
  if (file === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'join',
      file: file.value,
      on: clauses.choice('on', ['time', 'temperature']) ?? 'time',
      offset: clauses.one('offset', 'amount'),
    }),
  };
};

export const readBlank: HeadReader = (reader) => {
  const file = readFile(reader, 'the file of the blank');
  if (file === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'blank',
      file: file.value,
      subtract: clauses.one('subtract', 'signals') ?? ['mass'],
      crucible: clauses.one('crucible', 'crucible'),
      atmospheres: atmospheres(clauses),
      repeatability: clauses.one('repeatability', 'amount'),
    }),
  };
};

/** `of "FILE"`, or nothing. */
function readOf(reader: LineReader): { readonly of: string | null } | null {
  if (reader.atEnd()) return { of: null };
  if (!reader.word('of')) return reader.expected('`of` and a file, or the end of the line');
  reader.identity = `${reader.identity ?? ''} of`;
  const file = readFile(reader, 'the file meant');
  return file === null ? null : { of: file.value };
}

export const readColumns: HeadReader = (reader) => {
  const of = readOf(reader);
  if (of === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'columns',
      ...of,
      columns: clauses.ofForms(['column']).map(({ value }) => value),
    }),
  };
};

export const readReading: HeadReader = (reader) => {
  const of = readOf(reader);
  return of === null ? null : { build: (common, clauses) => reading(common, clauses, of.of) };
};

function reading(common: Common, clauses: Clauses, of: string | null) {
  const count = (word: string): ValueOf['count'] | null => clauses.one(word, 'count');
  return {
    ...common,
    kind: 'reading',
    of,
    delimiter: clauses.one('delimiter', 'text'),
    decimal: clauses.one('decimal', 'text'),
    skip: count('skip'),
    header: count('header'),
    footer: count('footer'),
    encoding: clauses.one('encoding', 'encoding'),
    block: count('block'),
  } as const;
}

export const readProgramme: HeadReader = () => ({
  build: (common, clauses) => ({
    ...common,
    kind: 'programme',
    parts: clauses.ofForms(['ramp', 'hold']).map(({ value }) => value),
  }),
});

export const readMethodTitle: HeadReader = (reader) => {
  const title = readText(reader, 'the title of the method');
  if (title === null) return null;
  reader.note('title', title.span);
  return { build: (common) => ({ ...common, kind: 'method', title: title.value }) };
};

export const readUseMethod: HeadReader = (reader) => {
  const file = readFile(reader, 'the file of the method');
  return file === null ? null : { build: (common) => ({ ...common, kind: 'use method', file: file.value }) };
};
