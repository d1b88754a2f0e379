import type { GlossText, Snapshot } from '../engine/snapshot';
import type { GlossRole } from '../findings/finding';
import type { Statement } from '../language/model';
import type { StatementNode } from '../language/tree';
import { LineColumns } from './lineColumns';

/** The texts of a snapshot with their line tables, made once. */
export class SnapshotTexts {
  private readonly gloss: LineColumns;
  private readonly method: LineColumns | null;

  constructor(private readonly snapshot: Snapshot) {
    this.gloss = new LineColumns(snapshot.gloss.tree.text);
    this.method = snapshot.method === null ? null : new LineColumns(snapshot.method.tree.text);
  }

  positions(file: GlossRole): LineColumns {
    return file === 'method' && this.method !== null ? this.method : this.gloss;
  }

  path(file: GlossRole): string {
    return this.text(file).display;
  }

  /** The line of a statement; the first line where the text does not have it. */
  line(file: GlossRole, id: string): number {
    const node = this.node(file, id);
    return node === undefined ? 1 : this.positions(file).at(node.span.start).line;
  }

  /** What a statement says at one of its tokens; empty where it has none. */
  words(file: GlossRole, id: string, token: string): string {
    const span = this.node(file, id)?.tokens.get(token);
    return span === undefined ? '' : this.positions(file).text.slice(span.start, span.end);
  }

  node(file: GlossRole, id: string): StatementNode | undefined {
    return this.text(file).tree.statements.find((s) => s.id === id);
  }

  /** The statement that holds an offset. */
  statementAt(file: GlossRole, offset: number): StatementNode | undefined {
    return this.text(file).tree.statements.find((s) => s.span.start <= offset && offset <= s.span.end);
  }

  private text(file: GlossRole): GlossText {
    return file === 'method' && this.snapshot.method !== null ? this.snapshot.method : this.snapshot.gloss;
  }
}

/** Statements of one kind in written order, of the gloss first, then of its method. */
export function statementsOf<K extends Statement['kind']>(
  snapshot: Snapshot,
  kind: K,
): { readonly file: GlossRole; readonly node: StatementNode; readonly statement: Extract<Statement, { kind: K }> }[] {
  return (['gloss', 'method'] as const).flatMap((file) =>
    (snapshot[file]?.tree.statements ?? []).flatMap((node) => {
      const { statement } = node;
      return statement?.kind === kind ? [{ file, node, statement: statement as Extract<Statement, { kind: K }> }] : [];
    }),
  );
}

/** The overrides of a gloss: what it does otherwise than its method, and why. */
export function overrides(snapshot: Snapshot): { readonly id: string; readonly because: string | null }[] {
  return snapshot.gloss.tree.statements.flatMap(({ id, statement }) =>
    statement?.override === true ? [{ id, because: statement.because }] : [],
  );
}
