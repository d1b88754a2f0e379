import { nothingMoved, rowMoved, shownRow, valueText } from '../diff/shownRows';
import { plural } from '../plural';
import type { HistoryModel, HistoryRow } from './model';

/** One revision as text, the same in every format. */
export interface ShownRevision {
  readonly revision: string;
  readonly date: string;
  readonly author: string;
  readonly value: string;
  readonly difference: string;
  readonly relative: string;
  /** What moved it, or why there is no number. */
  readonly cause: string;
}

export const historyHeads = [
  'revision',
  'date',
  'author',
  'value ± u (k = 1)',
  'difference',
  'of it',
  'what moved it',
] as const;

/** The working copy has no id of its own. */
export const workingCopy = 'working copy';

export function shownRevision(row: HistoryRow): ShownRevision {
  const { revision, result, diff } = row;
  const shown = diff === null ? null : shownRow(diff, row);
  return {
    revision: revision?.short ?? workingCopy,
    // The day as its author had it.
    date: revision?.date.slice(0, 10) ?? '',
    author: revision?.author ?? '',
    value: result === null || result.state === 'failed' ? (isTroubled(row) ? 'cannot compute' : '') : valueText(result),
    difference: row.status === 'equal' ? '—' : (shown?.difference ?? ''),
    relative: row.status === 'equal' ? '' : (shown?.relative ?? ''),
    cause: words(row, shown?.cause ?? ''),
  };
}

export function cellsOf(shown: ShownRevision): readonly string[] {
  const { revision, date, author, value, difference, relative, cause } = shown;
  return [revision, date, author, value, difference, relative, cause];
}

/** True where the result moved beyond tolerance, came, went or could no longer be computed. */
export function revisionMoved({ diff, status }: HistoryRow): boolean {
  return diff !== null && status !== 'equal' && rowMoved(diff);
}

function isTroubled({ status, result }: HistoryRow): boolean {
  return status === 'cannot compute' || result?.state === 'failed';
}

function words(row: HistoryRow, cause: string): string {
  const { diff, was, again, isMerge, reason, status, result } = row;
  const parts: string[] = [];
  if (isMerge) parts.push('merge: also what the other side changed');
  if (again !== null) parts.push(`there is no ${again} here; ${row.id} is followed again`);
  if (was !== null) parts.push(`the gloss was ${was}`);
  if (diff !== null && diff.was !== null) parts.push(`it was ${diff.was}`);
  // The remark of a difference says it where the result is there.
  if (reason !== null && (result === null || diff === null)) parts.push(reason);
  if (cause !== '') parts.push(cause);
  else if (status === 'within tolerance' || status === 'first' || status === 'oldest here') parts.push(status);
  else if (status === 'added' || status === 'removed') parts.push(status);
  return parts.join('; ');
}

/** What stands below the rows. */
export function historyNotes(model: HistoryModel): string[] {
  const { rows, end } = model;
  const moved = rows.filter(revisionMoved).length;
  const notes = [
    plural(
      moved,
      `of ${rows.length} revisions moved it beyond tolerance.`,
      `of ${rows.length} revisions moved it beyond tolerance.`,
    ) ?? nothingMoved,
  ];
  if (end.kind === 'limit') notes.push('Older revisions are left out (--limit).');
  if (end.kind === 'since') notes.push(`Revisions up to ${end.revision} are left out (--since).`);
  if (end.kind === 'uncommitted') notes.push('The gloss is not committed.');
  if (end.kind === 'content') notes.push(`What came before is not shown: ${end.message}.`);
  if (end.kind === 'shallow') {
    notes.push(
      `This clone is shallow: what came before ${end.from} is not here; \`git fetch --unshallow\` fetches it.`,
    );
  }
  return notes;
}
