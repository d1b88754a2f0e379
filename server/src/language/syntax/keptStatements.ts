import type { Span } from '../../base/span';
import type { StatementNode } from '../tree';
import type { Role } from '../vocabulary/record';

/** What a statement depends on besides its own lines. */
export interface Around {
  readonly role: Role | null;
  readonly roleDecided: boolean;
}

/** A statement without a finding, free of where it stood: spans count from its first character. */
export interface KeptStatement {
  readonly node: StatementNode;
  /** What tells it from others of the text. */
  readonly identity: string;
  /** How many there were of this identity, with it. */
  readonly times: number;
  /** Its kind is counted, because a gloss has one of it. */
  readonly single: string | null;
  /** As it leaves the text behind it. */
  readonly after: Around;
}

const MOST = 500;

/**
 * Statements read before, by their text: while one line of a gloss is edited the others are not read again. Held by whoever
 * parses the same texts over and over; the oldest goes first.
 */
export class KeptStatements {
  private readonly statements = new Map<string, KeptStatement>();

  get(text: string, around: Around): KeptStatement | undefined {
    return this.statements.get(keyOf(text, around));
  }

  set(text: string, around: Around, statement: KeptStatement): void {
    if (this.statements.size >= MOST) this.statements.delete(this.statements.keys().next().value as string);
    this.statements.set(keyOf(text, around), statement);
  }
}

function keyOf(text: string, { role, roleDecided }: Around): string {
  return `${role} ${roleDecided}\n${text}`;
}

/** The same statement with every span moved. */
export function movedBy(node: StatementNode, by: number): StatementNode {
  const moved = ({ start, end }: Span): Span => ({ start: start + by, end: end + by });
  const tokens = new Map<string, Span>();
  for (const [name, span] of node.tokens) tokens.set(name, moved(span));
  return { ...node, span: moved(node.span), tokens };
}
