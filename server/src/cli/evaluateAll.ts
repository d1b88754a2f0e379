import { dirname, resolve } from 'node:path';
import type { Snapshot } from '../engine/snapshot';
import { withSlashes } from '../host/root';
import type { Context } from './context';
import { BadUsage } from './exitCodes';
import { checkPlace, openGloss } from './glossText';
import { expandInputs, glosses } from './inputs';
import { refuseInput } from './outputFile';
import { Progress } from './progress';
import { writeWhole } from './writeFile';

/** Evaluates every gloss that was named, in order; all are read before any is evaluated. */
export function evaluateAll(context: Context, command: string): Promise<Snapshot[]> {
  return evaluatePaths(context, context.typed.operands, command);
}

export async function evaluatePaths(
  { typed, terminal, workspaces }: Context,
  operands: readonly string[],
  command: string,
): Promise<Snapshot[]> {
  if (operands.length === 0) throw new BadUsage(`${command} needs a gloss, a folder or a pattern`);
  const inputs = await expandInputs(operands, terminal.cwd, glosses);
  checkPlace(inputs, typed.values.get('at'));
  const opened = [];
  for (const input of inputs) opened.push(await openGloss(input, typed.values.get('at'), terminal, workspaces));
  const progress = new Progress(terminal);
  try {
    const snapshots: Snapshot[] = [];
    for (const { path, text, workspace } of opened) {
      progress.now(`${snapshots.length + 1} of ${opened.length}: ${workspace.host.display(path)}`);
      snapshots.push(await workspace.evaluate(withSlashes(path), text));
    }
    return snapshots;
  } finally {
    progress.end();
  }
}

/** Results go to standard output, or whole into the file named with `-o`, which is then said. */
export function writeResults({ typed, terminal }: Context, text: string): void {
  const file = typed.values.get('output');
  if (file === undefined) {
    terminal.out(text);
    return;
  }
  const target = resolve(terminal.cwd, file);
  refuseInput(target, file, [terminal.cwd, ...typed.operands.map((o) => dirname(resolve(terminal.cwd, o)))]);
  writeWhole(target, text);
  terminal.error(`${file} written\n`);
}
