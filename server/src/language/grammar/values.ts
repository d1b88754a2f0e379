import { functions } from '../vocabulary/functions';
import { signals } from '../vocabulary/signals';
import { directions } from '../syntax/signals';
import { blank, date, name, nameLetter, number, unit, words } from './lexical';
import { captures, match, scope, type Pattern } from './pattern';

const channels = signals.filter((signal) => signal.channel).map((signal) => signal.word);
const plainSignals = signals.filter((signal) => !signal.channel).map((signal) => signal.word);

/** Rules that head lines and clauses share, by the name under which they are included. */
export const values: Readonly<Record<string, Pattern>> = {
  comment: {
    name: scope('comment.line.number-sign'),
    match: '(#).*$',
    captures: captures({ 1: 'punctuation.definition.comment' }),
  },
  text: {
    name: scope('string.quoted.double'),
    begin: '"',
    end: '"|$',
    beginCaptures: captures({ 0: 'punctuation.definition.string.begin' }),
    endCaptures: captures({ 0: 'punctuation.definition.string.end' }),
    patterns: [match('constant.character.escape', '\\\\["\\\\nt]'), match('invalid.illegal.escape', '\\\\[^"\\\\nt]')],
  },
  date: match('constant.numeric.date', date),
  // A comma between digits is a finding wherever it stands.
  decimalComma: match('invalid.illegal.decimal-comma', '\\d+(?:\\.\\d+)?(?:,\\d+(?:\\.\\d+)?)+'),
  amount: {
    match: `(${number})(?:${blank}*(${unit}))?`,
    captures: captures({ 1: 'constant.numeric', 2: 'keyword.other.unit' }),
  },
  unit: match('keyword.other.unit', `(?<!${nameLetter})(?:${unit}|1)(?!${nameLetter})`),
  segment: {
    match: `(${words(directions)})${blank}+(\\d+)`,
    captures: captures({ 1: 'constant.language.segment', 2: 'constant.numeric' }),
  },
  signal: {
    patterns: [
      {
        match: `(${words(channels)})(\\()(${number})(\\))`,
        captures: captures({
          1: 'support.variable.signal',
          2: 'punctuation.section.brackets.begin',
          3: 'constant.numeric',
          4: 'punctuation.section.brackets.end',
        }),
      },
      match('support.variable.signal', words(plainSignals)),
    ],
  },
  formula: {
    begin: `(?<!${nameLetter})(M)(\\()`,
    end: '(\\))|$|(?=#)',
    beginCaptures: captures({ 1: 'support.function', 2: 'punctuation.section.brackets.begin' }),
    endCaptures: captures({ 1: 'punctuation.section.brackets.end' }),
    contentName: scope('string.unquoted.formula'),
    patterns: [{ include: '#formulaGroup' }],
  },
  formulaGroup: { begin: '\\(', end: '\\)|$|(?=#)', patterns: [{ include: '#formulaGroup' }] },
  function: match('support.function', `${words(functions.map((f) => f.name))}(?=${blank}*\\()`),
  result: {
    match: `(${name})(\\.)(${name})`,
    captures: captures({ 1: 'variable.other.readwrite', 2: 'punctuation.accessor', 3: 'variable.other.property' }),
  },
  name: match('variable.other.readwrite', `(?<!${nameLetter})${name}`),
  words: match('string.unquoted', `(?<!${nameLetter})${name}`),
  operator: {
    patterns: [
      match('keyword.operator.comparison', '<=|>=|[\u2264\u2265]'),
      match('keyword.operator.uncertainty', '±|\\+/-'),
      match('keyword.operator.range', '\\.\\.'),
      match('keyword.operator.assignment', '='),
      match('keyword.operator.arithmetic', '[-\u2212+*/^]'),
      match('punctuation.separator.comma', ','),
      match('punctuation.section.brackets.begin', '\\('),
      match('punctuation.section.brackets.end', '\\)'),
    ],
  },
};

/** What may stand on any line: texts, the comment, numbers with their units, signs. */
export const onAnyLine = ['comment', 'text', 'date', 'decimalComma', 'amount', 'operator'] as const;
