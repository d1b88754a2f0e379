import type { Tree } from '../../language/tree';

/** What a gloss is, in a line: its method's title, its specimen, or the empty crucible. */
export function usedFor(tree: Tree): string {
  for (const { statement } of tree.statements) {
    if (statement?.kind === 'method') return `Method: ${statement.title}`;
    if (statement?.kind === 'run') {
      return statement.sampleIsNone
        ? 'The run of an empty crucible'
        : `The run of ${statement.sample ?? 'an unnamed specimen'}`;
    }
  }
  return 'A gloss without a role';
}
