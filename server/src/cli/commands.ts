/** What a command accepts. Parser, help and tests read these records. */
export interface CommandRecord {
  readonly name: CommandName;
  readonly summary: string;
  readonly usage: readonly string[];
  readonly examples: readonly { readonly line: string; readonly does: string }[];
  readonly options: readonly OptionRecord[];
  readonly exit: readonly string[];
}

export interface OptionRecord {
  readonly long: string;
  readonly short: string | null;
  /** Placeholder of its value; null: a switch. */
  readonly value: string | null;
  /** The only values it takes; null: any. */
  readonly values: readonly string[] | null;
  readonly help: string;
}

export type CommandName = 'new' | 'check' | 'results' | 'format' | 'diff' | 'history' | 'report' | 'approve' | 'lsp';

export const formats = ['text', 'json', 'csv', 'markdown'] as const;
export type Format = (typeof formats)[number];

/** Those of `check`: also annotations of a workflow and SARIF 2.1.0. */
export const checkFormats = [...formats, 'github', 'sarif'] as const;
export type CheckFormat = (typeof checkFormats)[number];

/** A revision is A or B where it names one: `HEAD`, a branch, a tag, `HEAD~2`, or `index`. */
export const diffFormats = ['text', 'json', 'markdown', 'html'] as const;

export const reportFormats = ['html', 'markdown'] as const;

const format: OptionRecord = {
  long: 'format',
  short: null,
  value: 'FORMAT',
  values: formats,
  help: `${formats.join(', ')}; text unless given`,
};
const at: OptionRecord = {
  long: 'at',
  short: null,
  value: 'PATH',
  values: null,
  help: 'where the gloss from standard input is taken to stand',
};
const output: OptionRecord = { long: 'output', short: 'o', value: 'FILE', values: null, help: 'write there instead' };

const tolerance: OptionRecord = {
  long: 'tolerance',
  short: null,
  value: 'LIST',
  values: null,
  help: 'loss=0.02,First.start=0.5 in the shown units; a bare number is the fraction of the combined uncertainty (0.05)',
};

function flag(long: string, help: string): OptionRecord {
  return { long, short: null, value: null, values: null, help };
}

export const commands: readonly CommandRecord[] = [
  {
    name: 'new',
    summary: 'draft a gloss for a run file',
    usage: ['new RUN [-o FILE]', 'new --method METHOD RUN...'],
    examples: [
      { line: 'thermogloss new b.csv -o b.gloss', does: 'columns, segments and effects of b.csv, as a gloss to edit' },
      { line: 'thermogloss new --method limestone.gloss "series/*.csv"', does: 'a short gloss beside each run' },
    ],
    options: [
      {
        long: 'method',
        short: null,
        value: 'METHOD',
        values: null,
        help: 'use this method; writes NAME.gloss beside each run and overwrites none',
      },
      { ...output, help: 'write the gloss there; an existing file is not overwritten' },
    ],
    exit: ['0 done', '2 bad usage, a file that cannot be read, a gloss that is already there'],
  },
  {
    name: 'check',
    summary: 'list what stands against the numbers',
    usage: ['check GLOSS... [--fail-on SEVERITY] [--format FORMAT] [-o FILE]', 'check - [--at PATH]'],
    examples: [
      { line: 'thermogloss check "**/*.gloss"', does: 'every gloss below this folder' },
      { line: 'thermogloss check b.gloss --fail-on warning', does: 'warnings fail it too' },
      { line: 'thermogloss check "**/*.gloss" --format github', does: 'annotations in a workflow, the worst 10 first' },
      { line: 'thermogloss check "**/*.gloss" --format sarif -o b.sarif', does: 'a log for code scanning' },
    ],
    options: [
      {
        long: 'fail-on',
        short: null,
        value: 'SEVERITY',
        values: ['error', 'warning', 'note'],
        help: 'exit with 1 from this severity on: error, warning, note; error unless given',
      },
      { ...format, values: checkFormats, help: `${checkFormats.join(', ')}; text unless given` },
      at,
      output,
    ],
    exit: [
      '0 nothing stands at or above --fail-on',
      '1 findings, not allowed, at or above --fail-on',
      '2 bad usage, a file that cannot be read, no match',
    ],
  },
  {
    name: 'results',
    summary: 'evaluate glosses and show every number with its uncertainty',
    usage: ['results GLOSS... [--all] [--explain] [--geometry] [--format FORMAT] [-o FILE]', 'results - [--at PATH]'],
    examples: [
      { line: 'thermogloss results b.gloss', does: 'one run: a row a result, verdicts below' },
      { line: 'thermogloss results "series/*.gloss"', does: 'many runs: a row a run, with n, mean and s' },
      { line: 'thermogloss results b.gloss --explain', does: 'the steps behind each number' },
      { line: 'thermogloss results b.gloss --format json', does: 'full precision, one object a gloss and line' },
    ],
    options: [
      flag('all', 'every quantity, not only the main ones and those that the gloss uses'),
      flag('explain', 'with text: how the files were read and what each number rests on'),
      flag('geometry', 'with text or json: the construction lines in data units'),
      format,
      at,
      output,
    ],
    exit: ['0 done', '1 a result failed', '2 bad usage, a file that cannot be read, no match'],
  },
  {
    name: 'diff',
    summary: 'show which results moved between two revisions, and what moved them',
    usage: [
      'diff [A [B]] [-- PATHS] [--merge-base] [--all] [--within] [--tolerance LIST] [--format FORMAT] [-o FILE]',
      'diff OLD NEW',
    ],
    examples: [
      { line: 'thermogloss diff', does: 'the glosses below this folder, from HEAD to the working copy' },
      { line: 'thermogloss diff main HEAD -- series', does: 'two revisions of one folder' },
      { line: 'thermogloss diff saved.json b.gloss', does: 'what was saved with results --format json, and now' },
    ],
    options: [
      flag('merge-base', 'compare from what A has in common with B'),
      flag('all', 'every quantity, not only the main ones and those that the gloss uses'),
      flag('within', 'also what did not move beyond tolerance'),
      tolerance,
      { ...format, values: diffFormats, help: `${diffFormats.join(', ')}; text unless given` },
      output,
    ],
    exit: ['0 nothing moved beyond tolerance', '1 a result moved', '2 bad usage, no such revision or file'],
  },
  {
    name: 'history',
    summary: 'follow one result through the revisions: value, difference, what moved it',
    usage: ['history NAME [GLOSS] [--since REV] [--limit N] [--tolerance LIST] [--format FORMAT] [-o FILE]'],
    examples: [
      {
        line: 'thermogloss history First.loss b.gloss',
        does: 'newest first, a row a revision that touched what it rests on',
      },
      { line: 'thermogloss history ratio --since v1.0', does: 'of the only gloss here that has it, after that tag' },
      { line: 'thermogloss history First.loss b.gloss --format csv', does: 'full precision, a record a revision' },
    ],
    options: [
      { long: 'since', short: null, value: 'REV', values: null, help: 'only revisions that came after this one' },
      { long: 'limit', short: null, value: 'N', values: null, help: 'at most so many rows' },
      tolerance,
      format,
      output,
    ],
    exit: ['0 done', '2 bad usage, no such result, gloss or revision'],
  },
  {
    name: 'report',
    summary: 'write everything behind the numbers as one page to print or review',
    usage: ['report GLOSS... [--date YYYY-MM-DD] [--format FORMAT] [-o FILE]', 'report - [--at PATH]'],
    examples: [
      {
        line: 'thermogloss report b.gloss -o b.html',
        does: 'one self-contained page: results, figures, how each was made',
      },
      { line: 'thermogloss report b.gloss --date 2026-10-05', does: 'issued on that day' },
    ],
    options: [
      {
        long: 'date',
        short: null,
        value: 'YYYY-MM-DD',
        values: null,
        help: 'day of issue; without it that of the latest approval that holds, else the report says that it is not issued',
      },
      { ...format, values: reportFormats, help: `${reportFormats.join(', ')}; html unless given` },
      at,
      output,
    ],
    exit: ['0 done', '1 a result failed', '2 bad usage, a file that cannot be read, no match'],
  },
  {
    name: 'format',
    summary: 'lay glosses out evenly; numbers stay as they are written',
    usage: ['format GLOSS... [--check]', 'format - [--check]'],
    examples: [
      { line: 'thermogloss format "**/*.gloss"', does: 'in place' },
      { line: 'thermogloss format --check b.gloss', does: 'changes nothing, exits with 1 where it would' },
      { line: 'thermogloss format - < b.gloss', does: 'from standard input to standard output' },
    ],
    options: [flag('check', 'list what would change, change nothing'), at],
    exit: ['0 done', '1 with --check: something would change', '2 bad usage, a file that cannot be read, no match'],
  },
  {
    name: 'approve',
    summary: 'stand for the results of a gloss: a record beside it, and a line that names it',
    usage: ['approve GLOSS --by NAME [--date YYYY-MM-DD] [--because TEXT]'],
    examples: [
      {
        line: 'thermogloss approve b.gloss --by "M. Ruiz"',
        does: 'writes b.gloss.approved.json and a line in b.gloss',
      },
      {
        line: 'thermogloss approve b.gloss --by "M. Ruiz" --because "released for a trial batch only"',
        does: 'although a requirement is not met',
      },
    ],
    options: [
      { long: 'by', short: null, value: 'NAME', values: null, help: 'who approves' },
      {
        long: 'date',
        short: null,
        value: 'YYYY-MM-DD',
        values: null,
        help: 'the day of the approval; today unless given',
      },
      {
        long: 'because',
        short: null,
        value: 'TEXT',
        values: null,
        help: 'the reason; needed where an error stands, or a requirement is not met or inconclusive',
      },
    ],
    exit: ['0 done', '2 bad usage, a file that cannot be read, nothing to approve, a reason that is lacking'],
  },
  {
    name: 'lsp',
    summary: 'serve an editor: the language server over standard input and output',
    usage: ['lsp'],
    examples: [{ line: 'thermogloss lsp', does: 'started by an editor, for files of the language `gloss`' }],
    options: [{ ...flag('stdio', 'said by some editors; it changes nothing') }],
    exit: ['0 its client has closed it', '2 bad usage'],
  },
];

export const help: OptionRecord = { long: 'help', short: 'h', value: null, values: null, help: 'show this help' };
export const versionOption: OptionRecord = {
  long: 'version',
  short: null,
  value: null,
  values: null,
  help: 'show the version',
};
