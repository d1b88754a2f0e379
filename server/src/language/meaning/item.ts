import type { Finding, GlossRole } from '../../findings/finding';
import type { Statement } from '../model';
import type { StatementNode, Tree } from '../tree';
import { writeCanonical } from '../writing/canonical';

/** A text that takes part: the gloss, or the method it imports. */
export interface Source {
  readonly tree: Tree;
  readonly file: GlossRole;
}

export interface PlacedNode {
  readonly node: StatementNode;
  readonly source: Source;
}

/** A statement in effect, with the lines it comes from: the override first, then what it changes. */
export interface Item<S extends Statement = Statement> {
  readonly statement: S;
  readonly nodes: readonly [PlacedNode, ...PlacedNode[]];
  readonly canonical: string;
  readonly overridden: string | null;
}

export function itemOf(node: StatementNode, source: Source): Item | null {
  if (node.statement === null) return null;
  return { statement: node.statement, nodes: [{ node, source }], canonical: node.canonical, overridden: null };
}

/** The item an override makes. Its content is what is in effect, wherever it was written. */
export function overriddenItem(base: Item, over: PlacedNode, merged: Statement): Item {
  const lost = [over, ...base.nodes].flatMap(({ node }) =>
    node.canonical.split('\n').filter((line) => line.startsWith('? ')),
  );
  const canonical = [writeCanonical({ ...merged, override: false, because: null }), ...lost].join('\n');
  return { statement: merged, nodes: [over, ...base.nodes], canonical, overridden: merged.because };
}

/** The line that holds a token: the override's where it wrote it. */
export function nodeWith(item: Pick<Item, 'nodes'>, token: string): PlacedNode {
  return item.nodes.find(({ node }) => node.tokens.has(token)) ?? item.nodes[0];
}

/** Its keyword as written, `override step`. */
export function keywordText({ node, source }: PlacedNode): string {
  const span = node.tokens.get('keyword');
  return span === undefined ? '' : source.tree.text.slice(span.start, span.end);
}

export function isOverride(placed: PlacedNode): boolean {
  return keywordText(placed).startsWith('override');
}

/** The keyword without `override`. */
export function keywordOf(placed: PlacedNode): string {
  return keywordText(placed).split(/\s+/).pop() ?? '';
}

/** Clauses whose loss changes no number. */
const besideNumbers = new Set(
  'note allow crucible atmosphere sample contains operator evaluator hazard measured calibrated on'.split(' '),
);

/** What such a clause is when it is misread, but its statement still has its decisions. */
const harmless = new Set(['unknown-clause', 'clause-twice', 'clause-not-indented', 'later-word']);

/** Clauses of a statement that decide a number and could not be read. */
export function unreadDecisions(node: StatementNode, word: (word: string) => boolean = () => true): readonly string[] {
  return (node.unread ?? []).filter((unread) => !besideNumbers.has(unread) && word(unread));
}

/** The code by which a statement with unread decisions fails; null where it has none. */
export function unreadCode(item: Pick<Item, 'nodes'>): string | null {
  for (const { node, source } of item.nodes) {
    if (unreadDecisions(node).length === 0) continue;
    const within = (finding: Finding): boolean =>
      'span' in finding.at &&
      finding.at.span.start >= node.span.start &&
      finding.at.span.end <= node.span.end &&
      !harmless.has(finding.code);
    return source.tree.findings.find(within)?.code ?? 'unexpected-text';
  }
  return null;
}
