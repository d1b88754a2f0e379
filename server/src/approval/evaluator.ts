import type { Tree } from '../language/tree';

/** Who made the decisions of a gloss, and what says so. */
export interface Evaluator {
  readonly name: string;
  /** `clause evaluator`, `author of the last change to its statements in git`. */
  readonly from: string;
}

/** Who made the last commit that changed a statement of the gloss at `path`, whose text is `text`; null: not known. */
export type LastAuthor = (path: string, text: string) => Promise<string | null>;

export async function evaluatorOf(path: string, tree: Tree, lastAuthor: LastAuthor): Promise<Evaluator | null> {
  const run = tree.statements.find(({ statement }) => statement?.kind === 'run')?.statement;
  const named = run?.kind === 'run' ? run.evaluator : null;
  if (named !== null) return { name: named, from: 'the clause evaluator' };
  const author = await lastAuthor(path, tree.text);
  return author === null ? null : { name: author, from: 'author of the last change to the statements in git' };
}

/** Blanks at the ends, runs of blanks, case and the way of writing an accent make no other person. */
export function samePerson(a: string, b: string): boolean {
  const plain = (name: string): string => name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
  return plain(a) === plain(b);
}
