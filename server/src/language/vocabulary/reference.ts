import { bases } from './bases';
import { functions } from './functions';
import { laterWords } from './later';
import { quantities, type EvaluationKind } from './quantities';
import { readingRules } from './readingRules';
import type { ClauseRecord, StatementRecord } from './record';
import { signals } from './signals';
import { everywhere } from './clauses';
import { statements } from './statements';

/**
 * The reference of the language as Markdown, from the same records the parser and the checks read. The same records give
 * the same text.
 */
export function generateReference(): string {
  return [
    '# Reference of the gloss language',
    'Generated from the vocabulary. Standards are cited from memory. Every example is read by the tests without a finding.',
    '## Statements',
    ...statements.flatMap(statement),
    '## Clauses of every statement',
    clauseTable(everywhere),
    '## Result quantities',
    'Each temperature in °C has a twin in minutes, `…_time` (of `temperature` it is `time`); a hold has only those.',
    ...(Object.keys(quantities) as EvaluationKind[]).flatMap(quantityTable),
    '## Mass bases',
    table(
      ['Clause', 'Meaning'],
      bases.map((basis) => [code(basis.example), basis.prose]),
    ),
    '## Signals',
    table(
      ['Signal', 'Meaning'],
      signals.map((signal) => [code(signal.example), signal.prose]),
    ),
    '## Functions',
    table(
      ['Function', 'Meaning', 'Example'],
      functions.map((record) => [code(record.form), record.prose, code(record.example)]),
    ),
    '## Rules of reading',
    readingRules.map((rule) => `- ${rule}`).join('\n'),
    '## Words of later releases',
    'They are not computed yet and say so.',
    table(
      ['Word', 'Meaning'],
      laterWords.map((later) => [code(later.word), later.prose]),
    ),
    '',
  ].join('\n\n');
}

function statement(record: StatementRecord): readonly string[] {
  const roles = record.roles.map((role) => `${role} glosses`).join(' and ');
  const times = record.repeatable ? '' : ' Once.';
  const override = record.overridable ? ' Can be overridden.' : '';
  const own = record.clauses.filter((clause) => !everywhere.includes(clause));
  return [
    `### ${code(record.form)}`,
    record.prose,
    `In ${roles}.${times}${override}`,
    ...(record.parameters.length === 0
      ? []
      : [record.parameters.map((parameter) => `- ${code(parameter.name)}: ${parameter.meaning}`).join('\n')]),
    ...(own.length === 0 ? [] : [clauseTable(own)]),
    fenced(record.example),
  ];
}

function clauseTable(clauses: readonly ClauseRecord[]): string {
  return table(
    ['Clause', 'Meaning', 'Default', 'Example'],
    clauses.map((clause) => [code(clause.form), clause.prose, clause.default ?? '', code(clause.example)]),
  );
}

function quantityTable(kind: EvaluationKind): readonly string[] {
  const rows = quantities[kind].filter((record) => record.kind !== 'time' || !record.name.endsWith('_time'));
  return [
    `### Of a ${kind}`,
    table(
      ['Quantity', 'Unit', 'Definition', 'Standard'],
      rows.map((record) => [code(record.name), record.unit, record.definition, record.standard]),
    ),
  ];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replace(/\|/g, '\\|')).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

function code(text: string): string {
  return `\`${text}\``;
}

function fenced(text: string): string {
  return `\`\`\`gloss\n${text}\n\`\`\``;
}
