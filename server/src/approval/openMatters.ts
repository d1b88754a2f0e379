import type { Snapshot } from '../engine/snapshot';
import { findingRecord } from '../findings/table';
import { SnapshotTexts } from '../presentation/statements';

const shownAtOnce = 5;

/**
 * What stands against the results, in words: errors that are not allowed, requirements not met, inconclusive or not
 * evaluated. What was allowed has its reason already. Findings about approvals do not count: the approval answers them.
 */
export function openMatters(snapshot: Snapshot): string[] {
  const texts = new SnapshotTexts(snapshot);
  const standing = snapshot.findings.filter(
    (f) =>
      f.allowed === null &&
      (f.severity === 'error' || f.code === 'requirement-inconclusive') &&
      (findingRecord(f.code).family !== 'approval' || f.code === 'allow-not-possible'),
  );
  const found = standing.map((f) => `line ${texts.positions(f.file).at(f.span.start).line}: ${f.code}`);
  const lines = new Set(standing.map((f) => texts.positions(f.file).at(f.span.start).line));
  const silent = snapshot.requirements
    .filter((r) => r.verdict === 'not evaluated' && !lines.has(texts.line(r.file, r.statement)))
    .map((r) => `${r.name ?? r.text} is not evaluated`);
  const all = [...found, ...silent];
  const more = all.length - shownAtOnce;
  return more <= 0 ? all : [...all.slice(0, shownAtOnce), `and ${more} more`];
}
