import type { Span } from '../../base/span';
import { normalName } from '../../language/syntax/characters';
import type { StatementNode, Tree } from '../../language/tree';

/** A place where a name stands. */
export interface Occurrence {
  readonly name: string;
  readonly span: Span;
  readonly node: StatementNode;
  readonly token: string;
  /** `part`: in a sum, which defines it where no statement does. */
  readonly role: 'definition' | 'override' | 'part' | 'use';
}

/** Tokens that are a name read by their statement (tree.ts lists them). */
const uses = /^(?:(?:expression|limit)(?:\/\d+)*|per|on|encloses)\.name(?:#\d+)?$/;
const parts = /^sum\/\d+$/;

/** Every place of a text where a name stands, in the order of the text; also in statements that break behind it. */
export function occurrencesIn(tree: Tree): readonly Occurrence[] {
  return tree.statements.flatMap((node) => occurrencesOf(tree, node)).sort((a, b) => a.span.start - b.span.start);
}

/** The places of one name. */
export function occurrencesOfName(tree: Tree, name: string): readonly Occurrence[] {
  return occurrencesIn(tree).filter((o) => o.name === name);
}

/** The name under an offset; of `First.loss` the name also where the offset is in the quantity. */
export function occurrenceAt(tree: Tree, offset: number): Occurrence | null {
  const all = occurrencesIn(tree);
  const on = all.find(({ span }) => span.start <= offset && offset <= span.end);
  return on ?? all.find((o) => holds(quantityOf(o), offset)) ?? null;
}

/** Where the quantity behind a name stands; null where there is none. */
function quantityOf({ node, token }: Occurrence): Span | null {
  return token.endsWith('.name') ? (node.tokens.get(token.replace(/name$/, 'quantity')) ?? null) : null;
}

export function isOverride(tree: Tree, node: StatementNode): boolean {
  const keyword = node.tokens.get('keyword');
  return keyword !== undefined && tree.text.startsWith('override', keyword.start);
}

function occurrencesOf(tree: Tree, node: StatementNode): Occurrence[] {
  const found: Occurrence[] = [];
  const add = (token: string, span: Span, role: Occurrence['role']): void => {
    found.push({ name: normalName(tree.text.slice(span.start, span.end)), span, node, token, role });
  };
  for (const [token, span] of node.tokens) {
    if (token === 'name' && node.name !== null) add(token, span, isOverride(tree, node) ? 'override' : 'definition');
    else if (parts.test(token)) add(token, span, 'part');
    // The head of `allow CODE on NAME` notes the name itself; a clause `on NAME` notes its line, and the name below it.
    else if (uses.test(token) || (token === 'on' && isHeadName(node))) add(token, span, 'use');
  }
  return found;
}

function isHeadName(node: StatementNode): boolean {
  return node.statement?.kind === 'allow' && !node.tokens.has('on.value');
}

function holds(span: Span | null, offset: number): boolean {
  return span !== null && span.start <= offset && offset <= span.end;
}
