import { parseArgs } from 'node:util';
import type { CommandRecord, OptionRecord } from './commands';
import { commands, help, versionOption } from './commands';
import { nearest } from '../language/nearest';
import { BadUsage } from './exitCodes';

/** What was typed after the program's name, understood. */
export type CommandLine =
  | { readonly wants: 'brief help' | 'full help' | 'version' }
  | { readonly wants: 'help of'; readonly command: CommandRecord }
  | { readonly wants: 'run'; readonly command: CommandRecord; readonly typed: Typed };

export interface Typed {
  readonly operands: readonly string[];
  /** Those of the operands that stood after `--`; null: there was none. */
  readonly after: readonly string[] | null;
  /** Switches given. */
  readonly switches: ReadonlySet<string>;
  /** Values given, the last of each option. */
  readonly values: ReadonlyMap<string, string>;
}

export function readCommandLine(words: readonly string[]): CommandLine {
  const [first, ...rest] = words;
  if (first === undefined) return { wants: 'brief help' };
  if (first === '--help' || first === '-h') return { wants: 'full help' };
  if (first === '--version') return { wants: 'version' };
  if (first === 'help')
    return rest.length === 0 ? { wants: 'full help' } : { wants: 'help of', command: find(rest[0]) };
  if (first.startsWith('-')) throw new BadUsage(`the command comes first, then its options: ${first}`);
  const command = find(first);
  const typed = readOptions(command, rest);
  return typed.switches.has('help') ? { wants: 'help of', command } : { wants: 'run', command, typed };
}

function find(name: string): CommandRecord {
  const command = commands.find((c) => c.name === name);
  if (command !== undefined) return command;
  const [meant] = nearest(name, [...commands.map((c) => c.name), 'help']);
  const known = commands.map((c) => c.name).join(', ');
  throw new BadUsage(
    `there is no command "${name}"${meant === undefined ? '' : `; did you mean ${meant}?`} (${known})`,
  );
}

function readOptions(command: CommandRecord, words: readonly string[]): Typed {
  const options = [...command.options, help];
  const { tokens } = parseArgs({
    args: [...words],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(options.map(parserOption)),
  });
  const operands: string[] = [];
  let after: number | null = null;
  const switches = new Set<string>();
  const values = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === 'option-terminator') after = operands.length;
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    const option = options.find((o) => o.long === token.name);
    if (option === undefined) throw unknownOption(command, token.rawName, options);
    if (option.value === null) {
      if (token.value !== undefined) throw new BadUsage(`${token.rawName} takes no value`);
      switches.add(option.long);
    } else {
      values.set(option.long, checkedValue(option, token.rawName, token.value));
    }
  }
  return { operands, after: after === null ? null : operands.slice(after), switches, values };
}

function parserOption(option: OptionRecord): [string, { type: 'string' | 'boolean'; short?: string }] {
  const type = option.value === null ? 'boolean' : 'string';
  return [option.long, option.short === null ? { type } : { type, short: option.short }];
}

function checkedValue(option: OptionRecord, raw: string, value: string | undefined): string {
  if (value === undefined || value === '') throw new BadUsage(`${raw} needs a value: ${raw} ${option.value!}`);
  if (option.values !== null && !option.values.includes(value)) {
    const [meant] = nearest(value, option.values);
    const known = option.values.join(', ');
    throw new BadUsage(`${raw} knows no "${value}"${meant === undefined ? '' : `; did you mean ${meant}?`} (${known})`);
  }
  return value;
}

function unknownOption(command: CommandRecord, raw: string, options: readonly OptionRecord[]): BadUsage {
  const [meant] = nearest(
    raw.replace(/^-+/, ''),
    [...options, versionOption].map((o) => o.long),
  );
  return new BadUsage(`${command.name} has no option ${raw}${meant === undefined ? '' : `; did you mean --${meant}?`}`);
}
