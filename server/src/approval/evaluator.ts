import type { Tree } from '../language/tree';
import { sameStatements } from './inputs';

/** Who made the decisions of a gloss, and what says so. */
export interface Evaluator {
  readonly name: string;
  /** `clause evaluator`, `author of the last change to its statements in git`. */
  readonly from: string;
}

/** Who changed files last: what a version control tells, where there is one. */
export interface Authors {
  /**
   * Author of the last commit that changed what the file at `path` says, whose text is `text` now; `same` tells whether two
   * texts say the same. Null: not known.
   */
  of(path: string, text: string, same: (a: string, b: string) => boolean): Promise<string | null>;
  /** Files changed: there may be other commits. */
  forget(): void;
}

/** Where nothing tells who changed a file. */
export const noAuthors: Authors = { of: () => Promise.resolve(null), forget: () => undefined };

export async function evaluatorOf(path: string, tree: Tree, authors: Authors): Promise<Evaluator | null> {
  const run = tree.statements.find(({ statement }) => statement?.kind === 'run')?.statement;
  const named = run?.kind === 'run' ? run.evaluator : null;
  if (named !== null) return { name: named, from: 'the clause evaluator' };
  const author = await authors.of(path, tree.text, sameStatements);
  return author === null ? null : { name: author, from: 'author of the last change to the statements in git' };
}

/** Blanks at the ends, runs of blanks, case and the way of writing an accent make no other person. */
export function samePerson(a: string, b: string): boolean {
  const plain = (name: string): string => name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
  return plain(a) === plain(b);
}
