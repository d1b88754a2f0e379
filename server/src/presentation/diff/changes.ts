import type { GlossRole } from '../../findings/finding';
import type { StatementNode, Tree } from '../../language/tree';
import type { Change, ChangeKind } from './model';

/** Both texts of one side: the gloss and the method it imports. */
export interface SideTexts {
  readonly gloss: Tree;
  readonly method: Tree | null;
}

/** A statement that differs, with its place in both texts, so that it can be tried alone. */
export interface StatementChange extends Change {
  readonly file: GlossRole;
  readonly old: StatementNode | null;
  readonly new: StatementNode | null;
}

/** Statements that say something, but change no number. */
const silent = new Set(['note', 'programme', 'approved']);

/**
 * Statements that differ between two revisions of a gloss and its method, each once. Comments, order and spacing make
 * no difference, nor does a new name for the same meaning.
 */
export function statementChanges(older: SideTexts, newer: SideTexts): StatementChange[] {
  return [...changesOf('gloss', older.gloss, newer.gloss), ...changesOf('method', older.method, newer.method)];
}

function changesOf(file: GlossRole, older: Tree | null, newer: Tree | null): StatementChange[] {
  const left = byKey(older);
  const right = byKey(newer);
  const changes: StatementChange[] = [];
  for (const [key, to] of right) {
    const from = left.get(key) ?? null;
    if (from?.canonical === to.canonical) continue;
    changes.push(changeOf(file, key, from, to));
  }
  for (const [key, from] of left) {
    if (!right.has(key)) changes.push(changeOf(file, key, from, null));
  }
  return withoutRenames(changes).filter((c) => !silent.has((c.new ?? c.old)!.statement?.kind ?? ''));
}

/** The head of a run gloss is one statement whatever file it names; the others are known by their id. */
function byKey(tree: Tree | null): Map<string, StatementNode> {
  const nodes = new Map<string, StatementNode>();
  for (const node of tree?.statements ?? []) {
    const kind = node.statement?.kind;
    nodes.set(kind === 'run' ? 'run' : kind === 'use method' ? 'method' : node.id, node);
  }
  return nodes;
}

/** A statement that went and one that came with the same meaning under another name cancel. */
function withoutRenames(changes: readonly StatementChange[]): StatementChange[] {
  const gone = changes.filter((c) => c.new === null);
  const renamed = new Set<StatementChange>();
  for (const came of changes.filter((c) => c.old === null)) {
    const was = gone.find((g) => !renamed.has(g) && meaning(g.old!) === meaning(came.new!));
    if (was === undefined) continue;
    renamed.add(was);
    renamed.add(came);
  }
  return changes.filter((c) => !renamed.has(c));
}

function meaning(node: StatementNode): string {
  return node.name === null ? node.canonical : node.canonical.replace(` ${node.name}`, '');
}

function changeOf(file: GlossRole, key: string, from: StatementNode | null, to: StatementNode | null): StatementChange {
  const node = (to ?? from)!;
  const kind = node.statement?.kind;
  const of: ChangeKind =
    kind === 'rule'
      ? 'rule'
      : kind === 'blank'
        ? 'blank'
        : file === 'method' || key === 'method'
          ? 'method'
          : 'decision';
  const evaluates = node.name !== null && kind !== 'require';
  return { key, kind: of, text: words(from, to), about: evaluates ? node.name : null, file, old: from, new: to };
}

function words(from: StatementNode | null, to: StatementNode | null): string {
  return changeWords(from?.canonical ?? null, to?.canonical ?? null);
}

/**
 * From what to what a statement changed, by its canonical texts before and now, of which one is there: `step First 640..790
 * °C → step First 655..805 °C; span 10 K added`.
 */
export function changeWords(from: string | null, to: string | null): string {
  if (from === null) return `${head(to!)} added`;
  if (to === null) return `${head(from)} removed`;
  const parts: string[] = [];
  if (head(from) !== head(to)) parts.push(`${head(from)} → ${head(to)}`);
  const left = clauses(from);
  const right = clauses(to);
  const word = (line: string): string => line.split(' ')[0];
  for (const line of right.filter((l) => !left.includes(l))) {
    const was = left.find((l) => word(l) === word(line) && !right.includes(l));
    parts.push(was === undefined ? `${line} added` : `${was} → ${line}`);
  }
  for (const line of left.filter((l) => !right.includes(l))) {
    if (!right.some((l) => word(l) === word(line) && !left.includes(l))) parts.push(`${line} removed`);
  }
  return head(from) === head(to) ? `${head(to)}: ${parts.join('; ')}` : parts.join('; ');
}

function head(canonical: string): string {
  return canonical.split('\n')[0];
}

function clauses(canonical: string): string[] {
  return canonical.split('\n').slice(1);
}
