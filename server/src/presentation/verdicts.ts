import type { Snapshot } from '../engine/snapshot';
import type { Requirement, Verdict } from '../evaluation/result';
import type { Paint, Style } from './paint';
import { unpainted } from './paint';
import { shownExpanded, shownRequirementValue } from './shown';
import { SnapshotTexts } from './statements';
import { textTable } from './textTable';

export const verdictStyle: Readonly<Record<Verdict, Style>> = {
  met: 'good',
  'not met': 'error',
  inconclusive: 'warning',
  'not evaluated': 'warning',
};

export const verdictHeaders = ['verdict', 'requirement', 'judged by (± u, k = 1)', 'expanded, about 95 %'] as const;

/** Verdict, requirement, the value it is judged by, U = k·u. */
export function verdictCells(
  requirement: Requirement,
  texts: SnapshotTexts,
): readonly [string, string, string, string] {
  const { name, text } = requirement;
  const value = shownRequirementValue(requirement);
  return [
    requirement.verdict,
    name === null ? text : `${name}: ${text}`,
    requirement.value !== null && isDifference(requirement, texts) ? `${value} (difference)` : value,
    shownExpanded(requirement),
  ];
}

/** Against an expression, the difference of both sides is judged: they may share influences. */
function isDifference(requirement: Requirement, texts: SnapshotTexts): boolean {
  const statement = texts.node(requirement.file, requirement.statement)?.statement;
  if (statement?.kind !== 'require' || statement.limit.form === 'in') return false;
  const { right } = statement.limit;
  return right.node !== 'amount' || right.amount.u !== null;
}

export function verdictLines(snapshot: Snapshot, paint: Paint = unpainted): string[] {
  if (snapshot.requirements.length === 0) return [];
  const texts = new SnapshotTexts(snapshot);
  return textTable(
    verdictHeaders.map((h, c) => ({ header: [h], align: c === 2 ? 'plus-minus' : 'left' })),
    snapshot.requirements.map((r) => ({ cells: verdictCells(r, texts), styles: { 0: verdictStyle[r.verdict] } })),
    paint,
  );
}
