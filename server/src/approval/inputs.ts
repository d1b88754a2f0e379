import type { Host } from '../base/host';
import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import type { Program } from '../language/program';
import { parse } from '../language/syntax/parse';
import type { StatementNode, Tree } from '../language/tree';
import { writeCanonical } from '../language/writing/canonical';
import { writeText } from '../language/writing/writeText';
import type { ApprovedFile } from './record';

/** What the results of a gloss rest on: its data files and the statements in effect. */
export interface Inputs {
  readonly files: readonly ApprovedFile[];
  readonly statements: readonly string[];
}

export async function inputsOf(engine: Engine, host: Host, snapshot: Snapshot): Promise<Inputs> {
  return { files: filesOf(snapshot), statements: await statementsOf(engine, host, snapshot) };
}

/** Data files, the run first, the others by role and path. A method is no data file: its statements count, not its bytes. */
function filesOf(snapshot: Snapshot): ApprovedFile[] {
  const from = snapshot.gloss.display;
  const others = snapshot.inputs.flatMap(({ role, display, identity }): ApprovedFile[] =>
    role === 'method' ? [] : [{ role, path: relativePath(from, display), identity }],
  );
  const key = (file: ApprovedFile): string => `${file.role} ${file.path}`;
  others.sort((a, b) => compare(key(a), key(b)));
  const { run } = snapshot;
  if (run === null) return others;
  return [{ role: 'run', path: relativePath(from, run.display), identity: run.identity }, ...others];
}

/**
 * The statements in effect, sorted: those of the gloss and its method, a statement that is overridden as the override has
 * made it, of two limits the one that counts. Notes count, for reports print them; so do lines that could not be read, for
 * what they were meant to say is not in the results. Comments and approvals do not. Of the gloss of a blank that counts
 * which the blank is read and compared by.
 */
async function statementsOf(engine: Engine, host: Host, { gloss, method }: Snapshot): Promise<string[]> {
  const { program } = engine.meaning(gloss.tree.text, method?.tree.text ?? null);
  const found = [...own(method?.tree ?? null, program), ...own(gloss.tree, program)];
  for (const { statement, canonical } of program.order) {
    if (!statement.override) continue;
    const unread = canonical.split('\n').filter((line) => line.startsWith('? '));
    found.push([writeCanonical({ ...statement, override: false }), ...unread].join('\n'));
  }
  for (const { statement } of program.blanks) {
    if (!statement.file.endsWith('.gloss')) continue;
    const text = await engine.text(host.resolve(gloss.path, statement.file));
    if (text === null) continue;
    const { run, columns, readings } = engine.meaning(text, null).program;
    const inner = [...(run === null ? [] : [run]), ...columns, ...readings];
    found.push(...inner.map(({ canonical }) => `in ${writeText(statement.file)}: ${canonical}`));
  }
  return found.map((text) => text.normalize('NFC')).sort(compare);
}

/** What a text says itself, without what its run gloss overrules. */
function own(tree: Tree | null, { order, rules }: Program): string[] {
  const overrides = order.filter(({ statement }) => statement.override);
  const names = new Set(overrides.map(({ statement }) => statement.name));
  const ids = new Set([...overrides, ...rules].map(({ id }) => id));
  const ruled = new Set(rules.map(({ statement }) => statement.code));
  const counts = ({ id, name, statement }: StatementNode): boolean => {
    if (statement === null) return true;
    if (statement.kind === 'approved') return false;
    if (statement.kind === 'rule') return ids.has(id) || !ruled.has(statement.code);
    if (statement.override) return !ids.has(id);
    return tree!.role === 'run' || name === null || !names.has(name);
  };
  return (tree?.statements ?? []).filter(counts).map(({ canonical }) => canonical);
}

/** True where two texts of a gloss say the same, their approvals aside. */
export function sameStatements(a: string, b: string): boolean {
  const said = (text: string): string =>
    parse(text)
      .statements.filter(({ statement }) => statement?.kind !== 'approved')
      .map(({ canonical }) => canonical.normalize('NFC'))
      .sort(compare)
      .join('\n\n');
  return said(a) === said(b);
}

/** `../blanks/z.csv`: a file as it lies from another one's folder. Both from one root, with `/`. */
export function relativePath(from: string, to: string): string {
  const folders = from.split('/').slice(0, -1);
  const parts = to.split('/');
  let same = 0;
  while (same < folders.length && same < parts.length - 1 && folders[same] === parts[same]) same++;
  return [...folders.slice(same).map(() => '..'), ...parts.slice(same)].join('/');
}

/** By code unit, on every machine the same. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
