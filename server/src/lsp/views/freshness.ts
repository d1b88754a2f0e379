import type { Freshness } from '../../protocol/view';
import type { Snapshot } from '../../engine/snapshot';
import type { GlossText } from '../../features/workspace';

type FirstError = NonNullable<Freshness['error']>;

/** The first error that stands, with its place; null: none. */
export function firstError(snapshot: Snapshot, gloss: GlossText, method: GlossText | null): FirstError | null {
  const finding = snapshot.findings.find((f) => f.severity === 'error' && f.allowed === null);
  if (finding === undefined) return null;
  const text = finding.file === 'method' && method !== null ? method : gloss;
  const line = text.positions.lineOf(finding.span.start) + 1;
  return { uri: text.uri, line, span: finding.span, message: finding.message };
}

/** Names of statements that cannot be read any more although the picture shows them. */
export function brokenNames(snapshot: Snapshot): readonly string[] {
  const trees = [snapshot.gloss.tree, ...(snapshot.method === null ? [] : [snapshot.method.tree])];
  return trees.flatMap((tree) => tree.statements.flatMap((s) => (s.broken && s.name !== null ? [s.name] : [])));
}

export function currentWords(error: FirstError | null): Freshness {
  return { state: 'current', text: error === null ? 'current' : `current; line ${error.line} has an error`, error };
}

/** `revision 38: line 12 has an error`: what is drawn is of that revision. */
export function staleWords(drawn: number, error: FirstError | null): Freshness {
  const text =
    error === null
      ? `revision ${drawn}: the text has changed since`
      : `revision ${drawn}: line ${error.line} has an error`;
  return { state: 'stale', text, error };
}

export function computingWords(drawn: number): Freshness {
  return { state: 'computing', text: drawn === 0 ? 'computing' : `computing; revision ${drawn} is shown`, error: null };
}
