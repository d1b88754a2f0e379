import type { Finding } from '../../findings/finding';
import type { Amount, EvaluationStatement, LetStatement, Place, RangeOf, Statement } from '../model';
import type { Effective, Program } from '../program';
import type { Tree } from '../tree';
import { amountProblems } from './statementProblems';

/**
 * Everything of both texts that `resolveProgram` looks at, but for the numbers in the windows of evaluations of the first: two
 * pairs of texts of one shape resolve alike. null: a line has a finding, and the texts are resolved anew.
 */
export function shapeOf(gloss: Tree, method: Tree | null): string | null {
  const parts = [gloss.role ?? ''];
  for (const tree of method === null ? [gloss] : [gloss, method]) {
    if (tree.findings.length > 0) return null;
    for (const { id, canonical, statement, unread } of tree.statements) {
      if (statement === null || (unread ?? []).length > 0) return null;
      parts.push(id, tree === gloss ? shapeOfStatement(statement, canonical) : canonical);
    }
    parts.push(`that was ${tree.role}`);
  }
  return parts.join('\n\n');
}

/** Statements are the same objects from one revision to the next while nothing in them changes. */
const known = new WeakMap<Statement, string>();

function shapeOfStatement(statement: Statement, canonical: string): string {
  const window = windowOf(statement);
  if (window === null) return canonical;
  let shape = known.get(statement);
  if (shape === undefined) {
    const unit = ({ unit }: Amount): string => unit?.text ?? '';
    const place = { segment: window.segment, units: [unit(window.from), unit(window.to)] };
    known.set(statement, (shape = JSON.stringify({ ...statement, place })));
  }
  return shape;
}

/** A window written in figures; of an override none, because what it makes of its statement holds them too. */
function windowOf(statement: Statement): (RangeOf & { readonly segment: Place['segment'] }) | null {
  if (statement.override || !('place' in statement) || statement.place.window?.rule !== 'range') return null;
  return { ...statement.place.window.range, segment: statement.place.segment };
}

/**
 * The program of a text whose shape is that of the text `before` was made from: the same with the windows written now. null
 * where that needs a look: a finding of `before` holds a place in its text, or a window is itself wrong.
 */
export function withMovedWindows(before: Program, gloss: Tree): Program | null {
  if (before.findings.some(isPlaced)) return null;
  const nodes = new Map(gloss.statements.map((node) => [node.id, node]));
  const order: Effective<EvaluationStatement | LetStatement>[] = [];
  for (const effective of before.order) {
    const node = effective.file === 'gloss' ? nodes.get(effective.id) : undefined;
    const statement = node?.statement ?? null;
    if (node === undefined || statement === null || windowOf(statement) === null) {
      order.push(effective);
      continue;
    }
    if (amountProblems(statement).length > 0 || amountProblems(effective.statement).length > 0) return null;
    order.push({ ...effective, statement: statement as EvaluationStatement, canonical: node.canonical });
  }
  return { ...before, order };
}

function isPlaced({ at, related, fixes }: Finding): boolean {
  return (
    'span' in at ||
    related.some((one) => 'span' in one.at) ||
    fixes.some(({ edits }) => edits.some((edit) => 'at' in edit && 'span' in edit.at))
  );
}
