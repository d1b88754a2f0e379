import type { PlacedFinding, Snapshot } from '../engine/snapshot';
import { inTextOrder } from './order';
import { SnapshotTexts } from './statements';

export interface DistinctFinding {
  readonly finding: PlacedFinding;
  readonly texts: SnapshotTexts;
  /** Relative to the root, with `/`. */
  readonly path: string;
}

/** Findings of many glosses in text order, each once: a method that several runs name is judged with each of them. */
export function distinctFindings(snapshots: readonly Snapshot[]): DistinctFinding[] {
  const seen = new Set<string>();
  return snapshots.flatMap((snapshot) => {
    const texts = new SnapshotTexts(snapshot);
    return inTextOrder(snapshot.findings).flatMap((finding) => {
      const path = texts.path(finding.file);
      const { code, severity, span, message, allowed } = finding;
      const key = JSON.stringify([path, code, severity, span.start, span.end, message, allowed]);
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ finding, texts, path }];
    });
  });
}
