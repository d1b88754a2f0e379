import { because } from '../vocabulary/clauses';
import type { ClauseRecord, StatementRecord } from '../vocabulary/record';
import { statements } from '../vocabulary/statements';
import { unknownClause, wordsOfForm } from './clauses';
import { blank, code, name, nameLetter, unit, words } from './lexical';
import { captures, include, match, type Pattern } from './pattern';
import { onAnyLine } from './values';

/** The place of an effect is shown as one word in the forms; these are the words in it. */
const place = ['around', 'within', 'in'];

/** One rule a keyword: the head line, then its clauses up to the next head. */
export function headPatterns(ruleOf: (clause: ClauseRecord) => string): readonly Pattern[] {
  const keywords = [...new Set(statements.map((record) => record.keyword))];
  return keywords.map((keyword) => {
    const records = statements.filter((record) => record.keyword === keyword);
    const clauses = records.flatMap((record) => record.clauses);
    const overridable = records.some((record) => record.overridable);
    const rules = [...(overridable ? [because] : []), ...clauses].map(ruleOf);
    return {
      ...head(keyword, records[0], overridable),
      // A comment line ends no statement, nor does an empty one.
      end: '^(?=[^\\s#])',
      patterns: [
        { begin: `\\G(?=${blank}*\\S)`, end: '$', patterns: headLine(records) },
        include('comment'),
        ...[...new Set(rules)].map(include),
        unknownClause,
      ],
    };
  });
}

function head(keyword: string, record: StatementRecord, overridable: boolean): Pattern {
  const override = overridable ? `(?:(override)${blank}+)?` : '()';
  const defined = record.form.startsWith(`${keyword} NAME`)
    ? `(${name})`
    : record.form.startsWith(`${keyword} CODE`)
      ? `(${code})`
      : null;
  const isValue = record.kind === 'let' || record.kind === 'given';
  const third =
    defined === `(${code})` ? 'constant.other.code' : isValue ? 'variable.other.constant' : 'entity.name.function';
  return {
    begin: `^${override}(${keyword})(?!${nameLetter})${defined === null ? '' : `(?:${blank}+${defined})?`}`,
    beginCaptures: captures({
      1: overridable ? 'storage.modifier.override' : null,
      2: 'keyword.control.statement',
      3: defined === null ? null : third,
    }),
  };
}

/** What stands behind the keyword, by the capitals and the small words of the form. */
function headLine(records: readonly StatementRecord[]): readonly Pattern[] {
  const form = records.map((record) => record.form).join(' ');
  const has = (capitals: string): boolean => new RegExp(`(?<![A-Z])${capitals}(?![A-Z])`).test(form);
  const small = [
    ...wordsOfForm(
      form,
      records.map((record) => record.keyword),
    ),
    ...(has('PLACE') ? place : []),
  ];
  const named = ['as', 'on'].filter((word) => small.includes(word));
  const patterns: Pattern[] = [];
  if (has('UNIT')) {
    patterns.push({
      match: `(${words(['in'])})${blank}+(${unit}|1)`,
      captures: captures({ 1: 'keyword.operator.word', 2: 'keyword.other.unit' }),
    });
  }
  for (const word of named) {
    patterns.push({
      match: `(${words([word])})${blank}+(${name})`,
      captures: captures({
        1: 'keyword.operator.word',
        2: word === 'as' ? 'entity.name.function' : 'variable.other.readwrite',
      }),
    });
  }
  if (has('HEX')) {
    patterns.push({
      match: `(${words(['digest'])})${blank}+([0-9a-f]{32})(?!${nameLetter})`,
      captures: captures({ 1: 'keyword.operator.word', 2: 'constant.other.digest' }),
    });
  }
  if (small.length > 0) patterns.push(match('keyword.operator.word', words(small)));
  if (has('PLACE') || has('SEGMENT')) patterns.push(include('segment'));
  if (has('SIGNAL')) patterns.push(include('signal'));
  const expression = has('EXPRESSION') ? ['formula', 'function', 'result'] : [];
  const names = has('EXPRESSION') || /\bA \+ B\b/.test(form) ? ['name'] : [];
  const [comment, text, date, ...rest] = onAnyLine;
  return [...[comment, text, date].map(include), ...patterns, ...[...expression, ...rest, ...names].map(include)];
}
