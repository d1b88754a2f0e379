import type { Span } from '../base/span';
import type { Finding } from '../findings/finding';
import type { Statement } from './model';

/**
 * What the parser makes of one text, whatever the text is: always a tree. A broken line costs only itself.
 * Offsets are UTF-16 from the start of the text with a BOM not counted.
 */
export interface Tree {
  readonly text: string;
  readonly role: 'run' | 'method' | null;
  readonly statements: readonly StatementNode[];
  /** Syntax findings, anchored by span of this file. */
  readonly findings: readonly Finding[];
}

export interface StatementNode {
  /**
   * Unique in the file and free of positions: `step First`, `blank "z.csv"`, `mask#2`, `override step First`. In a
   * method gloss `method/` stands before it, so that it is also unique beside the gloss that imports it.
   */
  readonly id: string;
  /** From the first character of the head to the end of the last clause (without trailing blanks and comment). */
  readonly span: Span;
  /**
   * Named places. Every statement has `head` (the head line without comment), `keyword`; where present `name`,
   * `window`, `window.from`, `window.to`, `segment`, `file`, `expression`, `limit`; for each clause WORD: `WORD` (its
   * line), `WORD.value` (its argument); a repeated clause counts on: `atmosphere#2`, `atmosphere#2.value`.
   * Parts of an expression: `expression/0/1` by child index (of the right side of `require`: `limit/0/1`), for a name
   * also its pieces `….name` and `….quantity`, for a formula the text within `M( )` as `….formula`.
   * Further places: `title`, `text`, `code`, `because`, `on`, `unit`, `signal`, `level`, `at`, `window.at`,
   * `window.within`, `sum`, `sum/0`, `limit.from`, `limit.to`; below a clause `crucible.volume`, `atmosphere.flow`,
   * `atmosphere.purity`, `atmosphere.from`, `atmosphere.segment`, `calibrated.signal`, `calibrated.range` (`.from`,
   * `.to`), `calibrated.u`, `heat.from`, `heat.to`, `heat.rate`, `hold.time`, `per.name`, `on.name`, `encloses.name#2`,
   * `allow.code`, `mass.unit` (under `columns`).
   */
  readonly tokens: ReadonlyMap<string, Span>;
  /** The statement without trivia, literals normalised as text: one blank between tokens, clauses sorted by word
   * (repeated ones keep their order). Equal texts mean equal statements. */
  readonly canonical: string;
  /** The typed statement; null where the head is broken. A name read before the break stays in `name`. */
  readonly statement: Statement | null;
  /** The name it defines, also when broken. */
  readonly name: string | null;
  readonly broken: boolean;
  /** Words of clauses that stand there and cannot be read. Their statement must not be computed with defaults instead. */
  readonly unread?: readonly string[];
}
