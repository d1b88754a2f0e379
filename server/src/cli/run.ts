import { processClock, type Clock } from './clock';
import type { CommandLine } from './commandLine';
import { readCommandLine } from './commandLine';
import type { CommandName } from './commands';
import type { Command } from './context';
import { BadUsage, done, Trouble, trouble } from './exitCodes';
import type { Terminal } from './terminal';
import type { Workspaces } from './workspaces';
import { WorkspacesByRoot } from './workspaces';

// Each command is loaded only when it is called: starting is most of the time of a small evaluation.
const load: Readonly<Record<CommandName, () => Promise<Command>>> = {
  new: async () => (await import('./new')).newGloss,
  check: async () => (await import('./check')).check,
  results: async () => (await import('./results')).results,
  diff: async () => (await import('./diff')).diff,
  history: async () => (await import('./history')).history,
  report: async () => (await import('./report')).report,
  approve: async () => (await import('./approve')).approveGloss,
  lsp: async () => (await import('./lsp')).languageServer,
  format: async () => (await import('./format')).formatGlosses,
};

/** One call of the command line; returns the exit code. */
export async function run(
  words: readonly string[],
  terminal: Terminal,
  workspaces: Workspaces = new WorkspacesByRoot(terminal.cwd),
  clock: Clock = processClock,
): Promise<number> {
  let line: CommandLine | null = null;
  try {
    line = readCommandLine(words);
    if (line.wants !== 'run') return await help(line, terminal);
    const command = await load[line.command.name]();
    return await command({ typed: line.typed, terminal, workspaces, clock });
  } catch (problem) {
    const where = line?.wants === 'run' ? ` ${line.command.name}` : '';
    if (problem instanceof Trouble) {
      terminal.error(`thermogloss${where}: ${problem.message}\n`);
      if (problem instanceof BadUsage) terminal.error(`thermogloss${where} --help shows how it is called\n`);
    } else {
      const text = problem instanceof Error ? (problem.stack ?? problem.message) : String(problem);
      terminal.error(`thermogloss${where}: a fault of the program, not of the files: ${text}\n`);
    }
    return trouble;
  }
}

async function help(line: Exclude<CommandLine, { wants: 'run' }>, terminal: Terminal): Promise<number> {
  if (line.wants === 'version') {
    const { version } = await import('../presentation/version');
    terminal.out(`thermogloss ${version}\n`);
    return done;
  }
  const texts = await import('./helpText');
  if (line.wants === 'help of') terminal.out(texts.commandHelp(line.command));
  else if (line.wants === 'full help') terminal.out(texts.fullHelp());
  else {
    terminal.error(texts.briefHelp());
    return trouble;
  }
  return done;
}
