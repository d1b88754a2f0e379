import { existsSync } from 'node:fs';
import { dirname, extname, relative, resolve } from 'node:path';
import { withSlashes } from '../host/root';
import type { Context } from './context';
import { BadUsage, done, Trouble, trouble } from './exitCodes';
import { expandInputs, runs } from './inputs';
import { writeNew } from './writeFile';

/** `thermogloss new`: one drafted gloss, or with a method a short one beside each run. Overwrites nothing. */
export async function newGloss(context: Context): Promise<number> {
  const { typed, terminal } = context;
  if (typed.operands.length === 0) throw new BadUsage('new needs a run file');
  const paths = await expandInputs(typed.operands, terminal.cwd, runs);
  const method = typed.values.get('method');
  if (method !== undefined) return besideEach(context, paths, resolve(terminal.cwd, method));
  if (paths.length > 1) throw new BadUsage(`new drafts one gloss at a time; with --method, one beside each run`);
  return draftOne(context, paths[0]);
}

async function draftOne(context: Context, run: string): Promise<number> {
  const { typed, terminal } = context;
  const output = typed.values.get('output');
  const target = output === undefined ? null : resolve(terminal.cwd, output);
  if (target !== null && dirname(target) !== dirname(run)) {
    throw new BadUsage('a gloss names its run by its path from the gloss: -o must name a file beside the run');
  }
  const text = await draft(context, run, null);
  if (target === null) terminal.out(text);
  else if (!writeNew(target, text)) throw new Trouble(`${output!} is already there; it was not changed`);
  else terminal.error(`${output!} written\n`);
  return done;
}

async function besideEach(context: Context, paths: readonly string[], method: string): Promise<number> {
  const { typed, terminal } = context;
  if (typed.values.has('output'))
    throw new BadUsage('with --method each gloss is written beside its run; leave -o out');
  if (!existsSync(method)) throw new Trouble(`there is no file ${typed.values.get('method')!}`);
  const shown = (path: string): string => relative(terminal.cwd, path);
  let kept = 0;
  for (const run of paths) {
    const target = `${run.slice(0, run.length - extname(run).length)}.gloss`;
    if (existsSync(target) || !writeNew(target, await draft(context, run, method))) {
      terminal.error(`${shown(target)} is already there; it was not changed\n`);
      kept++;
    } else {
      terminal.error(`${shown(target)} written\n`);
    }
  }
  return kept === 0 ? done : trouble;
}

async function draft({ terminal, workspaces }: Context, run: string, method: string | null): Promise<string> {
  const { draftGloss } = await import('../engine/draft');
  const { host } = await workspaces.of(run);
  const drafted = await draftGloss(
    host,
    withSlashes(run),
    method === null ? {} : { method: withSlashes(relative(dirname(run), method)) },
  );
  if (!drafted.ok) throw new Trouble(drafted.failure.message);
  for (const note of drafted.value.notes) terminal.error(`${note}\n`);
  return drafted.value.text;
}
