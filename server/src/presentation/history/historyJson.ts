import { sideObject } from '../diff/diffJson';
import { version } from '../version';
import type { HistoryModel, HistoryRow } from './model';
import { revisionMoved } from './shownHistory';

/** The schema number rises when a key goes or changes its meaning. */
export const historySchema = 'thermogloss-history/1';

/** One result through the revisions as a plain object after `history.schema.json`: full precision, every key present. */
export function historyJson(model: HistoryModel): object {
  return {
    schema: historySchema,
    program: version,
    name: model.name,
    gloss: model.gloss,
    rows: model.rows.map(rowObject),
    end: model.end.kind,
  };
}

function rowObject(row: HistoryRow): object {
  const { revision, diff } = row;
  return {
    revision: revision === null ? null : { commit: revision.commit, date: revision.date, author: revision.author },
    gloss: row.gloss,
    was: row.was,
    id: row.id,
    wasId: diff?.was ?? null,
    result: sideObject(row.result),
    reason: row.reason,
    status: row.status,
    moved: revisionMoved(row),
    merge: row.isMerge,
    again: row.again,
    difference: diff?.difference ?? null,
    relative: diff?.relative ?? null,
    uncertainty: diff?.uncertainty ?? null,
    tolerance: diff?.tolerance ?? null,
    remark: diff?.remark ?? null,
    changes: row.changes.map((c) => ({ key: c.key, kind: c.kind, text: c.text, about: c.about })),
    causes: (diff?.causes ?? []).map((c) => ({ change: c.change, effect: c.effect })),
    together: diff?.together ?? null,
  };
}
