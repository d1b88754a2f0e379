import type { PlacedFinding } from '../engine/snapshot';

/** Findings in the order of the text, of the gloss before those of its method. */
export function inTextOrder(findings: readonly PlacedFinding[]): PlacedFinding[] {
  return [...findings].sort(
    (a, b) =>
      Number(a.file === 'method') - Number(b.file === 'method') ||
      a.span.start - b.span.start ||
      rank[a.severity] - rank[b.severity] ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
  );
}

export const rank = { error: 0, warning: 1, note: 2 } as const;
