import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import type { Context } from './context';
import { BadUsage, done, found, Trouble } from './exitCodes';
import { checkPlace, decoded } from './glossText';
import { expandInputs, glosses, standardInput } from './inputs';
import { writeWhole } from './writeFile';

/** `thermogloss format`: in place, from standard input to standard output, or with `--check` only saying what would change. */
export async function formatGlosses(context: Context): Promise<number> {
  const { typed, terminal } = context;
  if (typed.operands.length === 0) throw new BadUsage('format needs a gloss, a folder or a pattern');
  const inputs = await expandInputs(typed.operands, terminal.cwd, glosses);
  const at = typed.values.get('at');
  checkPlace(inputs, at);
  // A run file that is named by mistake is never laid out.
  const other = inputs.find((input) => input !== standardInput && !input.endsWith('.gloss'));
  if (other !== undefined) throw new BadUsage(`${relative(terminal.cwd, other)} is no .gloss file`);
  const checkOnly = typed.switches.has('check');
  let changes = 0;
  for (const input of inputs) {
    const piped = input === standardInput;
    const before = piped ? decoded(await terminal.input(), 'standard input') : await fileText(context, input);
    const after = await laidOut(before);
    if (piped && !checkOnly) terminal.out(after);
    if (after === before) continue;
    changes++;
    const name = piped ? (at ?? 'standard input') : relative(terminal.cwd, input);
    if (checkOnly) terminal.out(`${name}\n`);
    else if (!piped) {
      writeWhole(input, after);
      terminal.error(`${name} laid out\n`);
    }
  }
  return checkOnly && changes > 0 ? found : done;
}

/** The file as it is, with its BOM and line ends; refused where the root does not hold it. */
export async function fileText({ workspaces }: Pick<Context, 'workspaces'>, path: string): Promise<string> {
  const { host } = await workspaces.of(path);
  const file = await host.read(path);
  if (!file.ok) throw new Trouble(file.message);
  return decoded(readFileSync(path), host.display(path));
}

async function laidOut(text: string): Promise<string> {
  const { format } = await import('../language/format');
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const crlf = text.includes('\r\n');
  const after = format(text.slice(mark.length).replaceAll('\r\n', '\n'));
  return mark + (crlf ? after.replaceAll('\n', '\r\n') : after);
}
