import type { DiffModel, DiffRow, GlossDiff, TextPlace } from '../../presentation/diff/model';
import { shownGloss, summaryLine, type ShownRow } from '../../presentation/diff/shownRows';
import type { ComparedGlossRows, ComparedPlace, ComparedRow, ComparedWith, Comparison } from '../../protocol/compare';
import type { TextRange } from '../../protocol/view';

export interface AnswerNames {
  readonly with: ComparedWith;
  readonly commit: string | null;
  /** Path of a gloss that is shown by its name. */
  readonly pathOf: (display: string) => string;
  readonly uriOf: (path: string) => string;
}

/** The one model of a comparison as the client shows it: what moved, with the line to open for each. */
export function comparisonOf(model: DiffModel, names: AnswerNames): Comparison {
  return {
    from: model.from,
    to: model.to,
    commit: names.commit === null ? null : names.commit.slice(0, 7),
    summary: summaryLine(model),
    glosses: model.glosses.map((diff) => glossOf(diff, names)),
  };
}

function glossOf(diff: GlossDiff, names: AnswerNames): ComparedGlossRows {
  const main = shownGloss(diff, { all: false, within: false });
  const all = shownGloss(diff, { all: true, within: false });
  const shown = new Set(main.rows.map((r) => r.row));
  const rowOf = (r: ShownRow): ComparedRow => answerRow(r, diff, names);
  return {
    title: diff.gloss,
    uri: diff.status === 'removed' ? null : names.uriOf(names.pathOf(diff.gloss)),
    status: diff.status,
    remarks: main.remarks,
    rows: main.rows.map(rowOf),
    further: all.rows.filter((r) => !shown.has(r.row)).map(rowOf),
    verdicts: main.verdicts,
    quiet: main.quiet,
    over: diff.status === 'both' ? overOf(names.with) : null,
  };
}

/** Saved results hold no curves. */
function overOf(by: ComparedWith): ComparedGlossRows['over'] {
  if (by.kind === 'revision') return { kind: 'against', name: by.name };
  return by.uri.endsWith('.gloss') ? { kind: 'overlay', uri: by.uri } : null;
}

function answerRow(shown: ShownRow, diff: GlossDiff, names: AnswerNames): ComparedRow {
  const { result, old, difference, relative, cause, row } = shown;
  const status = row.status === 'added' || row.status === 'removed' || row.status === 'changed' ? row.status : 'failed';
  const place = placeOf(row, diff, names);
  return { id: row.id, result, old, new: shown.new, difference, relative, status, cause, place };
}

/** The first cause that has a line; else the statement of the result in the gloss. */
function placeOf(row: DiffRow, diff: GlossDiff, names: AnswerNames): ComparedPlace | null {
  const causes = row.causes.map(({ change }) => diff.changes.find((c) => c.key === change)?.place ?? null);
  const caused = causes.find((p) => p !== null && (p.old !== null || p.new !== null)) ?? null;
  const place = caused ?? ofResult(row, diff, names);
  const path = place.new?.path ?? (place.old === null ? null : pathOther(place.old.path, diff, names, 'new'));
  const oldPath = place.old?.path ?? (place.new === null ? null : pathOther(place.new.path, diff, names, 'old'));
  if (path === null && oldPath === null) return null;
  const ofRevision = oldPath === null ? null : { uri: names.uriOf(oldPath), with: names.with };
  return {
    uri: path === null ? null : names.uriOf(path),
    range: place.new === null ? null : lineRange(place.new.line),
    old: names.with.kind === 'file' ? otherFile(names) : ofRevision,
    oldRange: place.old === null ? null : lineRange(place.old.line),
  };
}

/** Where the same text is on the other side: a gloss under its other name, a method under its own. */
function pathOther(path: string, diff: GlossDiff, names: AnswerNames, side: 'old' | 'new'): string | null {
  const now = names.pathOf(diff.gloss);
  const was = names.pathOf(diff.was ?? diff.gloss);
  if (path !== now && path !== was) return path;
  if (side === 'new') return diff.status === 'removed' ? null : now;
  return diff.status === 'added' ? null : was;
}

function otherFile({ with: by }: AnswerNames): ComparedPlace['old'] {
  return by.kind === 'file' && by.uri.endsWith('.gloss') ? { uri: by.uri, with: by } : null;
}

function ofResult(row: DiffRow, diff: GlossDiff, names: AnswerNames): { old: TextPlace | null; new: TextPlace | null } {
  const there = (status: GlossDiff['status'], gloss: string, line: number | null): TextPlace | null =>
    diff.status === status ? null : { path: names.pathOf(gloss), line: line ?? 1 };
  return {
    old: there('added', diff.was ?? diff.gloss, row.old?.line ?? null),
    new: there('removed', diff.gloss, row.new?.line ?? null),
  };
}

function lineRange(line: number): TextRange {
  return { start: { line: line - 1, character: 0 }, end: { line: line - 1, character: 0 } };
}
