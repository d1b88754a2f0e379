import type { Statement } from '../model';
import type { Effective } from '../program';
import type { Item } from './item';

/** A statement in effect as the program shows it. */
export function effective<S extends Statement>(
  item: Item<S>,
  needs: readonly string[],
  failed: string | null,
  allows: Effective<S>['allows'],
): Effective<S> {
  const { node, source } = item.nodes[0];
  return {
    statement: item.statement,
    id: node.id,
    file: source.file,
    canonical: item.canonical,
    needs,
    failed,
    overridden: item.overridden,
    allows,
  };
}
