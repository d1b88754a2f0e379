import { relative } from 'node:path';
import { withEdits } from '../approval/lines';
import { isLink, withSlashes } from '../host/root';
import { isDay } from '../presentation/report/day';
import { oneLine } from '../presentation/width';
import type { Context } from './context';
import { BadUsage, done, Trouble } from './exitCodes';
import { fileText } from './format';
import { expandInputs, glosses, standardInput } from './inputs';
import { writeWhole } from './writeFile';

/**
 * `thermogloss approve`: the record beside one gloss, and the line in it. One gloss a call: nobody stands for results by a
 * pattern. Nothing else is written.
 */
export async function approveGloss(context: Context): Promise<number> {
  const { typed, terminal, workspaces, clock } = context;
  const [operand, ...more] = typed.operands;
  if (operand === undefined || more.length > 0) throw new BadUsage('approve needs one gloss, named by its path');
  if (operand === standardInput) throw new BadUsage('approve writes beside a gloss: name its file');
  const by = typed.values.get('by');
  if (by === undefined) throw new BadUsage('approve needs who approves: --by NAME');
  const on = typed.values.get('date') ?? clock.today();
  if (!isDay(on)) throw new BadUsage(`--date ${on}: write a day as YYYY-MM-DD`);
  const [path, ...others] = await expandInputs([operand], terminal.cwd, { ...glosses, standardInput: false });
  if (others.length > 0) throw new BadUsage(`${operand} stands for several glosses; approve takes one`);
  const workspace = await workspaces.of(path);
  if (workspace.approve === undefined) throw new Error('a workspace that approves nothing');
  const before = await fileText(context, path);
  const mark = before.startsWith('\uFEFF') ? '\uFEFF' : '';
  const snapshot = await workspace.evaluate(withSlashes(path), before.slice(mark.length));
  const because = typed.values.get('because') ?? null;
  const approved = await workspace.approve(snapshot, { by, on, because });
  if (!approved.ok) {
    throw new Trouble(approved.needs === 'reason' ? `${approved.message}; --because "…" gives it` : approved.message);
  }
  if (isLink(approved.recordPath))
    throw new Trouble(`${approved.recordPath} is a link; the record is a file of its own`);
  writeWhole(approved.recordPath, approved.record);
  writeWhole(path, mark + withEdits(before.slice(mark.length), approved.edits));
  const say = (line: string): void => terminal.error(`${oneLine(line)}\n`);
  const shown = (file: string): string => relative(terminal.cwd, file);
  for (const { by: who, on } of approved.replaced) say(`the approval by ${who} on ${on} is replaced`);
  say(`${shown(path)} approved by ${by}, digest ${approved.digest}; record: ${shown(approved.recordPath)}`);
  return done;
}
