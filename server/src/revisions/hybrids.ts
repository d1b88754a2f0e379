import { OverlaidSource, type FileSource } from '../base/source';
import type { Snapshot } from '../engine/snapshot';
import type { Tree } from '../language/tree';
import type { StatementChange } from '../presentation/diff/changes';
import type { FileChange } from './fileChanges';
import type { RevisionEngine } from './revisionEngine';
import type { Side } from './side';

/** The old side with one change of the new made alone. */
export function withStatement(
  engine: RevisionEngine,
  older: Side,
  newer: Side,
  change: StatementChange,
  bytes: (text: string) => Uint8Array,
): Promise<Snapshot> {
  const gloss = older.snapshot.gloss.tree;
  if (change.file === 'gloss') {
    const source = overlaid(older, newer, new Map());
    return engine.evaluate(source, older.path, changedText(gloss, newer.snapshot.gloss.tree, change));
  }
  const { method } = older.snapshot;
  const other = newer.snapshot.method;
  if (method === null || other === null) return engine.evaluate(older.source, older.path);
  const text = changedText(method.tree, other.tree, change);
  const source = overlaid(older, newer, new Map([[method.path, { text, bytes: bytes(text) }]]));
  return engine.evaluate(source, older.path, gloss.text);
}

export function withFiles(engine: RevisionEngine, older: Side, newer: Side, change: FileChange): Promise<Snapshot> {
  const taken = new Map(change.paths.map((path) => [path, 'from the other' as const]));
  return engine.evaluate(overlaid(older, newer, taken), older.path, older.snapshot.gloss.tree.text);
}

function overlaid(older: Side, newer: Side, replaced: ConstructorParameters<typeof OverlaidSource>[2]): FileSource {
  return new OverlaidSource(older.source, newer.source, replaced);
}

/** The old text with one statement replaced by the new one, added at the end, or taken out. */
function changedText(older: Tree, newer: Tree, change: StatementChange): string {
  const added = change.new === null ? '' : newer.text.slice(change.new.span.start, change.new.span.end);
  if (change.old === null) return `${older.text}${older.text.endsWith('\n') ? '' : '\n'}${added}\n`;
  const { start, end } = change.old.span;
  return older.text.slice(0, start) + added + older.text.slice(end);
}
