import type { GlossRole } from '../../findings/finding';
import type { Amount, EvaluationStatement, PlaceWindow, SegmentName } from '../../language/model';
import type { StatementNode, Tree } from '../../language/tree';

/** A gloss and the method it imports, as trees. */
export interface Texts {
  readonly gloss: { readonly tree: Tree };
  readonly method: { readonly tree: Tree } | null;
}

/** A statement of one text. */
export interface Written {
  readonly file: GlossRole;
  readonly node: StatementNode;
  readonly statement: EvaluationStatement;
}

/** Where an evaluation's place is written, an override merged with what it overrides (language.md 4). */
export interface WrittenPlace {
  readonly name: string;
  /** The statement to show: the override's where there is one. */
  readonly shown: Written;
  readonly override: Written | null;
  /** The statement that is overridden, or the only one. */
  readonly base: Written | null;
  /** The statement whose window or point counts. */
  readonly holder: Written;
  readonly window: PlaceWindow | null;
  readonly segment: SegmentName | null;
  /** Of a residue: its temperature or time; null at the end of a segment. */
  readonly point: Amount | null;
  readonly sumOf: readonly string[] | null;
}

const kinds = ['step', 'peak', 'glass', 'onset', 'crossing', 'residue'] as const;

function isEvaluation(statement: StatementNode['statement']): statement is EvaluationStatement {
  return statement !== null && (kinds as readonly string[]).includes(statement.kind);
}

/** The evaluations of two texts by name, in written order, those of the method first. */
export function writtenPlaces(texts: Texts): readonly WrittenPlace[] {
  const bases = new Map<string, Written>();
  const overrides = new Map<string, Written>();
  for (const file of ['method', 'gloss'] as const) {
    for (const node of texts[file]?.tree.statements ?? []) {
      const { statement } = node;
      if (!isEvaluation(statement)) continue;
      const into = statement.override ? overrides : bases;
      if (!into.has(statement.name)) into.set(statement.name, { file, node, statement });
    }
  }
  const names = new Set([...bases.keys(), ...overrides.keys()]);
  return [...names].map((name) => placeOf(name, bases.get(name) ?? null, overrides.get(name) ?? null));
}

/** The text of a token of a statement; empty where it has none. */
export function tokenText({ file, node }: Written, token: string, texts: Texts): string {
  const span = node.tokens.get(token);
  return span === undefined ? '' : textOf(file, texts).slice(span.start, span.end);
}

export function textOf(file: GlossRole, texts: Texts): string {
  return (file === 'method' ? texts.method : texts.gloss)?.tree.text ?? '';
}

function placeOf(name: string, base: Written | null, override: Written | null): WrittenPlace {
  const shown = (override ?? base)!;
  const writes = override !== null && hasPlace(override.statement);
  const holder = writes || base === null ? shown : base;
  const common = { name, shown, override, base, holder };
  const { statement } = holder;
  if (statement.kind === 'residue') {
    const point = 'endOf' in statement.at ? null : statement.at.amount;
    const segment = 'endOf' in statement.at ? statement.at.endOf : statement.at.segment;
    return { ...common, window: null, segment, point, sumOf: null };
  }
  const sums = [override?.statement, base?.statement].map((s) =>
    s?.kind === 'step' || s?.kind === 'peak' ? s.sumOf : null,
  );
  const { window, segment } = statement.place;
  return { ...common, window, segment, point: null, sumOf: sums[0] ?? sums[1] ?? null };
}

/** A written place replaces the method's as a whole; an override without one leaves it. */
function hasPlace(statement: EvaluationStatement): boolean {
  return statement.kind === 'residue' || statement.place.window !== null || statement.place.segment !== null;
}
