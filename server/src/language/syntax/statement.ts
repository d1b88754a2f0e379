import type { Span } from '../../base/span';
import type { Common } from '../model';
import type { StatementNode } from '../tree';
import type { StatementRecord } from '../vocabulary/record';
import { writeCanonical } from '../writing/canonical';
import { singleBlanks } from '../writing/singleBlanks';
import { Clauses } from './clauseValues';
import type { Head } from './heads/head';

/** A statement while its lines are read. */
export class OpenStatement {
  readonly clauses = new Clauses();
  readonly unread: string[] = [];
  private readonly rawUnread: string[] = [];
  private readonly counts = new Map<string, number>();
  private end: number;

  constructor(
    /** null: a head that no record fits; its clauses are passed over. */
    readonly record: StatementRecord | null,
    readonly override: boolean,
    readonly identity: string,
    readonly tokens: Map<string, Span>,
    private readonly head: Head | null,
    private readonly name: string | null,
    private readonly headSpan: Span,
  ) {
    this.end = headSpan.end;
  }

  get broken(): boolean {
    return this.head === null;
  }

  /** The token of a clause: its word, counted from the second on. */
  count(word: string): { readonly key: string; readonly times: number } {
    const times = (this.counts.get(word) ?? 0) + 1;
    this.counts.set(word, times);
    return { key: times === 1 ? word : `${word}#${times}`, times };
  }

  grow(end: number): void {
    this.end = end;
  }

  lose(word: string, raw: string): void {
    this.unread.push(word);
    this.rawUnread.push(raw);
  }

  close(text: string, prefix: string, ids: Map<string, number>): StatementNode {
    const times = (ids.get(this.identity) ?? 0) + 1;
    ids.set(this.identity, times);
    const id = `${prefix}${this.identity}${times === 1 ? '' : `#${times}`}`;
    const span = { start: this.headSpan.start, end: this.end };
    const statement = this.head?.build(this.common(id), this.clauses) ?? null;
    const canonical =
      statement === null
        ? `? ${singleBlanks(text.slice(span.start, span.end)).replace(/\s*[\r\n]+\s*/g, '\n')}`
        : writeCanonical(statement);
    const unread = this.rawUnread.map((raw) => `\n? ${singleBlanks(raw)}`).join('');
    return {
      id,
      span,
      tokens: this.tokens,
      canonical: canonical + unread,
      statement,
      name: this.name,
      broken: statement === null,
      unread: this.unread,
    };
  }

  private common(id: string): Common {
    return {
      id,
      override: this.override,
      because: this.clauses.one('because', 'text'),
      notes: this.clauses.texts('note'),
      allows: this.clauses.all('allow', 'allow'),
    };
  }
}
