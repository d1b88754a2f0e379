import type { CommandRecord, OptionRecord } from './commands';
import { commands, help, versionOption } from './commands';

/** The few lines shown where no command was given. */
export function briefHelp(): string {
  return [
    'thermogloss evaluates thermal analysis runs from glosses: plain text beside the data.',
    '',
    '  thermogloss new b.csv -o b.gloss    draft a gloss for a run',
    '  thermogloss results b.gloss         evaluate it',
    '',
    `Commands: ${commands.map((c) => c.name).join(', ')}. thermogloss --help shows more.`,
    '',
  ].join('\n');
}

export function fullHelp(): string {
  return [
    'Examples',
    ...table(commands.map((c) => [c.examples[0].line, c.examples[0].does])),
    '',
    'Commands',
    ...table(commands.map((c) => [c.name, c.summary])),
    '',
    'Options',
    ...table([help, versionOption].map(optionRow)),
    '',
    'GLOSS and RUN are paths or patterns (* ? ** [ab] {a,b}); a folder stands for the glosses below it, - for standard input.',
    'Results go to standard output, messages to standard error. NO_COLOR turns colour off, FORCE_COLOR on.',
    'thermogloss COMMAND --help shows the options of a command.',
    '',
  ].join('\n');
}

export function commandHelp(command: CommandRecord): string {
  return [
    'Examples',
    ...table(command.examples.map((e) => [e.line, e.does])),
    '',
    'Usage',
    ...command.usage.map((u) => `  thermogloss ${u}`),
    '',
    'Options',
    ...table([...command.options, help].map(optionRow)),
    '',
    'Exit code',
    ...command.exit.map((e) => `  ${e}`),
    '',
  ].join('\n');
}

function optionRow(option: OptionRecord): [string, string] {
  const short = option.short === null ? '' : `-${option.short}, `;
  return [`${short}--${option.long}${option.value === null ? '' : ` ${option.value}`}`, option.help];
}

function table(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}
