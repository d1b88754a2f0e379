import type { PlacedFinding, Snapshot } from '../../engine/snapshot';
import type { GlossRole, Severity } from '../../findings/finding';
import type { StatementNode } from '../../language/tree';
import type { ViewFinding } from '../../protocol/view';
import { inTextOrder, rank } from '../order';
import { SnapshotTexts } from '../statements';

export interface TextUris {
  readonly gloss: string;
  readonly method: string | null;
}

/** Findings that stand, in the order of the text; `line` from 1, as messages count it. */
export function viewFindings(snapshot: Snapshot, uris: TextUris): ViewFinding[] {
  const texts = new SnapshotTexts(snapshot);
  return inTextOrder(snapshot.findings)
    .filter((f) => f.allowed === null)
    .map((f) => ({
      code: f.code,
      severity: f.severity,
      message: f.message,
      uri: f.file === 'method' ? (uris.method ?? uris.gloss) : uris.gloss,
      span: f.span,
      line: texts.positions(f.file).at(f.span.start).line,
      statement: nodeAt(snapshot, f.file, f.span.start)?.id ?? null,
    }));
}

/** The statement whose lines hold an offset. */
export function nodeAt(snapshot: Snapshot, file: GlossRole, offset: number): StatementNode | null {
  const tree = (file === 'method' ? snapshot.method : snapshot.gloss)?.tree;
  return tree?.statements.find((s) => s.span.start <= offset && offset <= s.span.end) ?? null;
}

/** What stands against each name: the findings on its statements, own or overridden. */
export class FindingsByName {
  private readonly byName = new Map<string, PlacedFinding[]>();

  constructor(private readonly snapshot: Snapshot) {
    for (const finding of inTextOrder(snapshot.findings)) {
      const name = this.nameAt(finding.file, finding.span.start);
      if (finding.allowed !== null || name === null) continue;
      this.byName.set(name, [...(this.byName.get(name) ?? []), finding]);
    }
  }

  of(name: string): readonly PlacedFinding[] {
    return this.byName.get(name) ?? [];
  }

  severity(name: string): Severity | null {
    return worst(this.of(name).map((f) => f.severity));
  }

  /** Names whose windows overlap with this one's, or were found at the same place, as findings say. */
  overlapping(name: string): string[] {
    const others = this.of(name)
      .filter((f) => f.code === 'window-overlap' || f.code === 'around-same-effect')
      .flatMap((f) => f.related.map((r) => this.nameAt(r.file, r.span.start)));
    return [...new Set(others.filter((other) => other !== null && other !== name))] as string[];
  }

  private nameAt(file: GlossRole, offset: number): string | null {
    return nodeAt(this.snapshot, file, offset)?.name ?? null;
  }
}

export function worst(severities: readonly Severity[]): Severity | null {
  return [...severities].sort((a, b) => rank[a] - rank[b])[0] ?? null;
}
