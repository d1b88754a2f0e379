import type { GlossRole } from '../findings/finding';
import type { StatementNode } from '../language/tree';
import type { StatementChange } from '../presentation/diff/changes';
import type { ChangePlace, TextPlace } from '../presentation/diff/model';
import { LineColumns } from '../presentation/lineColumns';
import { SnapshotTexts } from '../presentation/statements';
import type { Side } from './side';

/** Where a statement that differs stands on each side. */
export function placeOfStatement(older: Side, newer: Side, change: StatementChange): ChangePlace {
  return { old: placeOfNode(older, change.file, change.old), new: placeOfNode(newer, change.file, change.new) };
}

function placeOfNode({ snapshot }: Side, file: GlossRole, node: StatementNode | null): TextPlace | null {
  const text = snapshot[file];
  if (text === null || node === null) return null;
  return { path: text.path, line: new LineColumns(text.tree.text).at(node.span.start).line };
}

/** The statements that name a file which was replaced: `data`, `join FILE`, `blank FILE`. */
export function placeOfFile(older: Side, newer: Side, key: string): ChangePlace {
  return { old: naming(older, key), new: naming(newer, key) };
}

function naming({ program, snapshot }: Side, key: string): TextPlace | null {
  const found =
    key === 'data'
      ? program.run
      : [...program.joins, ...program.blanks].find(({ statement: s }) => key === `${s.kind} ${s.file}`);
  const text = found === undefined || found === null ? null : snapshot[found.file];
  if (found === undefined || found === null || text === null) return null;
  return { path: text.path, line: new SnapshotTexts(snapshot).line(found.file, found.id) };
}
