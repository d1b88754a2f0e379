import { version } from '../version';
import type { ComparedResult } from './compared';
import type { DiffModel, DiffRow, GlossDiff } from './model';
import { moved } from './shownRows';

/** The schema number rises when a key goes or changes its meaning. */
export const diffSchema = 'thermogloss-diff/1';

/** A comparison as a plain object after `diff.schema.json`: every row, full precision, every key present, no NaN. */
export function diffJson(model: DiffModel): object {
  return {
    schema: diffSchema,
    program: version,
    from: model.from,
    to: model.to,
    moved: model.glosses.some(moved),
    glosses: model.glosses.map(glossObject),
  };
}

function glossObject(g: GlossDiff): object {
  return {
    gloss: g.gloss,
    was: g.was,
    status: g.status,
    moved: moved(g),
    program: g.program,
    trouble: g.trouble,
    changes: g.changes.map((c) => ({ key: c.key, kind: c.kind, text: c.text, about: c.about })),
    results: g.rows.map(rowObject),
    requirements: g.verdicts.map((v) => ({
      label: v.label,
      status: v.status,
      old: v.old,
      new: v.new,
      limitChanged: v.limitChanged,
    })),
  };
}

function rowObject(r: DiffRow): object {
  return {
    id: r.id,
    was: r.was,
    status: r.status,
    old: sideObject(r.old),
    new: sideObject(r.new),
    difference: r.difference,
    relative: r.relative,
    unit: r.unit,
    uncertainty: r.uncertainty,
    tolerance: r.tolerance,
    remark: r.remark,
    causes: r.causes.map((c) => ({ change: c.change, effect: c.effect })),
    together: r.together,
    main: r.main,
  };
}

export function sideObject(r: ComparedResult | null): object | null {
  if (r === null) return null;
  return {
    state: r.state,
    value: r.value,
    uncertainty: r.uncertainty,
    unit: r.unit,
    limit: r.limit,
    basis: r.basis,
    reasons: r.reasons,
  };
}
