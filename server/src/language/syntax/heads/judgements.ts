import type { RequireStatement } from '../../model';
import { readAmount, readRange, readWrittenUnit } from '../amounts';
import { readExpression } from '../expressions';
import { replaceBy, type LineReader } from '../reader';
import { readCode, readDate, readDigest, readName, readReason, readText } from '../texts';
import { readDefined } from './evaluations';
import type { HeadReader } from './head';

export const readGiven: HeadReader = (reader) => {
  const name = readDefined(reader, 'the name of the value');
  if (name === null) return null;
  if (!reader.word('in')) return reader.expected('`in` and its unit, such as `in %`');
  const unit = readWrittenUnit(reader, 'with 1');
  if (unit === null) return null;
  reader.note('unit', unit.span);
  return { build: (common) => ({ ...common, kind: 'given', name, unit: unit.value }) };
};

export const readLet: HeadReader = (reader) => {
  const name = readDefined(reader, 'the name of the value');
  if (name === null) return null;
  if (!reader.sign('=')) return reader.expected('`=` and an expression');
  const expression = readExpression(reader, 'expression');
  if (expression === null) return null;
  return {
    build: (common, clauses) => ({ ...common, kind: 'let', name, expression, show: clauses.one('show', 'unit') }),
  };
};

export const readRequire: HeadReader = (reader) => {
  reader.skipBlanks();
  const start = reader.at;
  const left = readExpression(reader, 'expression');
  const limit = left === null ? null : readLimit(reader);
  if (left === null || limit === null) return null;
  const text = withSingleBlanks(reader.text.slice(start, reader.last.end));
  const name = reader.word('as') ? readDefined(reader, 'the name of the requirement') : null;
  if (reader.problem !== null) return null;
  return {
    build: (common, clauses) => {
      const on = clauses.one('on', 'name');
      return { ...common, kind: 'require', name, left, limit, text, ...(on === null ? {} : { on }) };
    },
  };
};

function readLimit(reader: LineReader): RequireStatement['limit'] | null {
  if (reader.word('in')) {
    const range = readRange(reader, 'limit', 'the limits, such as `60..65 %`');
    return range === null ? null : { form: 'in', range };
  }
  const form = readComparison(reader);
  if (form === null) return null;
  const right = readExpression(reader, 'limit');
  return right === null ? null : { form, right };
}

function readComparison(reader: LineReader): '<=' | '>=' | null {
  if (reader.sign('<=') || reader.sign('≤')) return '<=';
  if (reader.sign('>=') || reader.sign('≥')) return '>=';
  const { span, value } = reader.found();
  if (value !== '<' && value !== '>')
    return reader.expected('what is required: `in 60..65 %`, `<= 0.5 %` or `>= 10 mg`');
  return reader.fail('unexpected-text', span, `the limit itself is met: write \`${value}=\``, [
    replaceBy(span, `${value}=`),
  ]);
}

/** As written, with single blanks; texts do not occur in requirements. */
function withSingleBlanks(text: string): string {
  return text.replace(/[ \t\r\u00a0\u2007\u2009\u202f]+/g, ' ').trim();
}

export const readNote: HeadReader = (reader) => {
  const text = readText(reader, 'the note');
  if (text === null) return null;
  reader.note('text', text.span);
  return { build: (common, clauses) => ({ ...common, kind: 'note', text: text.value, on: clauses.one('on', 'name') }) };
};

export const readAllowHead: HeadReader = (reader) => {
  const code = readNotedCode(reader);
  if (code === null) return null;
  const on = reader.word('on') ? readName(reader, 'the name of a statement') : null;
  if (reader.problem !== null) return null;
  if (on !== null) {
    reader.note('on', on.span);
    reader.identity = `${reader.identity ?? ''} on ${on.value}`;
  }
  const reason = readNotedReason(reader);
  if (reason === null) return null;
  return {
    build: (common, clauses) => ({
      ...common,
      kind: 'allow',
      code,
      on: on?.value ?? clauses.one('on', 'name'),
      reason,
    }),
  };
};

export const readRule: HeadReader = (reader) => {
  const code = readNotedCode(reader);
  const limit = code === null ? null : readAmount(reader, 'signed');
  if (code === null || limit === null) return null;
  reader.note('limit', limit.span);
  const reason = readNotedReason(reader);
  if (reason === null) return null;
  return { build: (common) => ({ ...common, kind: 'rule', code, limit: limit.value, reason }) };
};

export const readMask: HeadReader = (reader) => {
  const range = readRange(reader, 'window', 'the range to leave out, such as `611..613 °C`');
  const reason = range === null ? null : readNotedReason(reader);
  if (range === null || reason === null) return null;
  return { build: (common) => ({ ...common, kind: 'mask', range, reason }) };
};

export const readApproved: HeadReader = (reader) => {
  if (!reader.word('by')) return reader.expected('`by` and the name of who approves, such as `by "M. Ruiz"`');
  const by = readText(reader, 'the name of who approves');
  if (by === null) return null;
  reader.note('by', by.span);
  if (by.value.trim() === '') return reader.fail('unexpected-text', by.span, 'the name is empty');
  if (!reader.word('on')) return reader.expected('`on` and the day, such as `on 2026-10-02`');
  const date = readDate(reader);
  if (date === null) return null;
  reader.note('date', date.span);
  if (!reader.word('digest')) return reader.expected('`digest` and what `thermogloss approve` wrote behind it');
  const digest = readDigest(reader);
  if (digest === null) return null;
  reader.note('digest', digest.span);
  return {
    build: (common) => ({ ...common, kind: 'approved', by: by.value, date: date.value, digest: digest.value }),
  };
};

function readNotedCode(reader: LineReader): string | null {
  const code = readCode(reader);
  if (code === null) return null;
  reader.note('code', code.span);
  reader.identity = `${reader.identity ?? ''} ${code.value}`;
  return code.value;
}

function readNotedReason(reader: LineReader): string | null {
  const reason = readReason(reader);
  if (reason === null) return null;
  reader.note('because', reason.span);
  return reason.value;
}
