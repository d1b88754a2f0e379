import { csv } from '../csv';
import type { HistoryModel } from './model';
import { revisionMoved, shownRevision, workingCopy } from './shownHistory';

export const historyCsvHeader = [
  'revision',
  'date',
  'author',
  'gloss',
  'id',
  'state',
  'value',
  'u',
  'unit',
  'difference',
  'u of the difference',
  'tolerance',
  'status',
  'beyond tolerance',
  'what moved it',
] as const;

/** One result through the revisions as CSV in full precision: a record a revision, newest first, differences in the unit of the record. */
export function historyCsv(model: HistoryModel): string {
  const records = model.rows.map((row) => {
    const { revision, result, diff } = row;
    return [
      revision?.commit ?? workingCopy,
      revision?.date ?? null,
      revision?.author ?? null,
      row.gloss,
      row.id,
      result?.state ?? null,
      result?.value ?? null,
      result?.uncertainty ?? null,
      result?.unit ?? null,
      diff?.difference ?? null,
      diff?.uncertainty ?? null,
      diff?.tolerance ?? null,
      row.status,
      revisionMoved(row) ? 'yes' : 'no',
      shownRevision(row).cause,
    ];
  });
  return csv([historyCsvHeader, ...records]);
}
