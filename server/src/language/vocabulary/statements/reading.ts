import type { ClauseRecord, OwnRecord } from '../record';
import { signals } from '../signals';

const columnExamples: Readonly<Record<string, string>> = {
  time: 'time column 1 in s',
  temperature: 'temperature "Temp./°C"',
  mass: 'mass column 3 in mg',
  heatflow: 'heatflow column 4 in mW',
  ion: 'ion(18) column 5 in A',
  absorbance: 'absorbance(2360) column 6 in 1',
};

const columnClauses: readonly ClauseRecord[] = signals
  .filter((signal) => signal.read)
  .map((signal) => ({
    word: signal.word,
    form: `${signal.channel ? `${signal.word}(N)` : signal.word} TEXT|column N [in UNIT]`,
    argument: { form: 'column' },
    prose: `Which column is this signal, by its header text or its number from 1, and in which unit. ${signal.prose}`,
    default: 'from the header',
    example: columnExamples[signal.word] ?? signal.word,
    // `ion(18)` and `ion(44)` are different clauses; the parser counts them by their full word.
    repeatable: false,
  }));

export const columnsRecord: OwnRecord = {
  keyword: 'columns',
  kind: 'columns',
  form: 'columns [of "FILE"]',
  parameters: [{ name: 'FILE', meaning: 'the file meant; without it the run and its blanks' }],
  prose: 'Which column holds which signal, where the header does not say it clearly.',
  roles: ['run'],
  repeatable: true,
  clauses: columnClauses,
  example: `columns of "clay-heat.txt"
  time column 1 in s
  temperature column 2 in °C
  heatflow column 3 in mW`,
};

function lines(word: string, prose: string): ClauseRecord {
  return {
    word,
    form: `${word} N lines`,
    argument: { form: 'count', unit: 'lines' },
    prose,
    default: 'detected',
    example: `${word} 2 lines`,
    repeatable: false,
  };
}

export const readingRecord: OwnRecord = {
  keyword: 'reading',
  kind: 'reading',
  form: 'reading [of "FILE"]',
  parameters: [{ name: 'FILE', meaning: 'the file meant; without it the run and its blanks' }],
  prose: 'How the text of a data file is to be taken apart, where detection fails or should not be relied on.',
  roles: ['run'],
  repeatable: true,
  clauses: [
    {
      word: 'delimiter',
      form: 'delimiter TEXT',
      argument: { form: 'text' },
      prose: 'What separates the columns; a blank stands for runs of blanks.',
      default: 'detected',
      example: 'delimiter ";"',
      repeatable: false,
    },
    {
      word: 'decimal',
      form: 'decimal TEXT',
      argument: { form: 'text' },
      prose: 'The decimal sign of the data, a point or a comma.',
      default: 'detected',
      example: 'decimal ","',
      repeatable: false,
    },
    lines('skip', 'Lines before the header that are no part of the table.'),
    lines('header', 'Lines of the header, of names and of units.'),
    lines('footer', 'Lines at the end that are no part of the table.'),
    {
      word: 'encoding',
      form: 'encoding NAME',
      argument: { form: 'encoding' },
      prose: 'The encoding of the text.',
      default: 'detected',
      example: 'encoding latin-1',
      repeatable: false,
    },
    {
      word: 'block',
      form: 'block N',
      argument: { form: 'count', unit: null },
      prose: 'Which of several runs that stand side by side in one table, from 1.',
      default: 'the only one',
      example: 'block 2',
      repeatable: false,
    },
  ],
  example: `reading of "clay-heat.txt"
  delimiter ";"
  decimal ","
  skip 3 lines`,
};

/** Encodings that can be named. */
export const encodings: readonly string[] = ['utf-8', 'utf-16le', 'utf-16be', 'latin-1'];
