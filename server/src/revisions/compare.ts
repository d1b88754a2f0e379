import type { FileSource } from '../base/source';
import type { Snapshot } from '../engine/snapshot';
import { statementChanges, type StatementChange } from '../presentation/diff/changes';
import { comparedOf, type ComparedGloss } from '../presentation/diff/compared';
import { compareNumbers } from '../presentation/diff/compareNumbers';
import type { Cause, DiffRow, GlossDiff } from '../presentation/diff/model';
import type { Tolerance } from '../presentation/diff/tolerance';
import { convertedTo } from '../presentation/diff/units';
import { fileChanges, type FileChange } from './fileChanges';
import { withFiles, withStatement } from './hybrids';
import { placeOfFile, placeOfStatement } from './places';
import type { RevisionEngine } from './revisionEngine';
import { dependencies, sideOf, type Side } from './side';

export interface CompareOptions {
  readonly tolerance: Tolerance;
  /** UTF-8 of a text. */
  readonly bytes: (text: string) => Uint8Array;
  /** Each change is tried alone where more than one could have moved a result. */
  readonly causes: boolean;
  /** Rows whose causes are asked for; all without it. */
  readonly only?: (row: DiffRow) => boolean;
}

/** One gloss on two sides; null where neither has it. `was`: its path on the old side, where it is another. */
export async function compareGloss(
  engine: RevisionEngine,
  from: FileSource,
  to: FileSource,
  path: string,
  options: CompareOptions,
  more: { readonly was?: string; readonly oldText?: string; readonly newText?: string } = {},
): Promise<GlossDiff | null> {
  const older = await sideOf(engine, from, more.was ?? path, more.oldText);
  const newer = await sideOf(engine, to, path, more.newText);
  if (older === null && newer === null) return null;
  if (older === null || newer === null) return oneSided(older, newer);
  return compareSides(engine, older, newer, options);
}

/** Two sides that are there. */
export async function compareSides(
  engine: RevisionEngine,
  older: Side,
  newer: Side,
  options: CompareOptions,
): Promise<GlossDiff> {
  // What a text says that cannot be read is not known: nothing in the other one has come or gone.
  if (older.unread !== null || newer.unread !== null) {
    return compareNumbers(older.compared, newer.compared, options.tolerance);
  }
  const statements = statementChanges(textsOf(older.snapshot), textsOf(newer.snapshot));
  const files = await fileChanges(engine.host, older, newer);
  const diff = compareNumbers(older.compared, newer.compared, options.tolerance);
  const changes = [
    ...statements.map((s) => ({ ...s, place: placeOfStatement(older, newer, s) })),
    ...files.map((f) => ({ ...f, place: placeOfFile(older, newer, f.key) })),
  ];
  const rows = options.causes
    ? await withCauses(engine, older, newer, diff.rows, statements, files, options)
    : diff.rows;
  return {
    ...diff,
    rows,
    changes: changes.map(({ key, kind, text, about, place }) => ({ key, kind, text, about, place })),
  };
}

/** A gloss that is on one side alone: its results came or went. */
export function oneSided(older: Side | null, newer: Side | null): GlossDiff {
  const only = (newer ?? older)!.compared;
  const nothing: ComparedGloss = { ...only, results: [], requirements: [], failure: null };
  const diff = older === null ? compareNumbers(nothing, only, noTolerance) : compareNumbers(only, nothing, noTolerance);
  return { ...diff, status: older === null ? 'added' : 'removed' };
}

const noTolerance: Tolerance = { fraction: 0, of: 'combined', relativeFloor: 0, floors: new Map() };

function textsOf(snapshot: Snapshot): Parameters<typeof statementChanges>[0] {
  return { gloss: snapshot.gloss.tree, method: snapshot.method?.tree ?? null };
}

/** Gives each result that moved the changes it can come from and, where there are several, the effect of each alone. */
async function withCauses(
  engine: RevisionEngine,
  older: Side,
  newer: Side,
  rows: readonly DiffRow[],
  statements: readonly StatementChange[],
  files: readonly FileChange[],
  options: CompareOptions,
): Promise<DiffRow[]> {
  const alone = new Map<string, ReadonlyMap<string, ComparedGloss['results'][number]>>();
  const tried = async (key: string): Promise<ReadonlyMap<string, ComparedGloss['results'][number]>> => {
    const known = alone.get(key);
    if (known !== undefined) return known;
    const statement = statements.find((s) => s.key === key);
    const snapshot =
      statement !== undefined
        ? await withStatement(engine, older, newer, statement, options.bytes)
        : await withFiles(
            engine,
            older,
            newer,
            files.find((f) => f.key === key)!,
          );
    const results = new Map(comparedOf(snapshot).results.map((r) => [r.id, r]));
    alone.set(key, results);
    return results;
  };
  const made: DiffRow[] = [];
  for (const row of rows) {
    const isAsked = options.only?.(row) ?? true;
    if (!isAsked || (row.status !== 'changed' && row.status !== 'cannot compute')) {
      made.push(row);
      continue;
    }
    const name = (row.new ?? row.old)!.name;
    const was = (row.old ?? row.new)!.name;
    const needed = new Set([...dependencies(newer.program, name), ...dependencies(older.program, was)]);
    const keys = [...statements, ...files].filter((c) => c.about === null || needed.has(c.about)).map((c) => c.key);
    if (keys.length < 2) {
      made.push({ ...row, causes: keys.map((change) => ({ change, effect: row.difference })) });
      continue;
    }
    const causes: Cause[] = [];
    for (const change of keys)
      causes.push({ change, effect: effectOf(row, (await tried(change)).get(row.old?.id ?? row.id)) });
    made.push(settled(row, causes));
  }
  return made;
}

function effectOf(row: DiffRow, alone: ComparedGloss['results'][number] | undefined): number | null {
  if (alone === undefined || alone.value === null || row.old === null || row.old.value === null) return null;
  const factor = convertedTo(alone.unit, row.unit);
  const before = convertedTo(row.old.unit, row.unit);
  return factor === null || before === null ? null : alone.value * factor - row.old.value * before;
}

/** Changes without an effect of their own are no causes; what the others leave is together. */
function settled(row: DiffRow, causes: readonly Cause[]): DiffRow {
  const least = 1e-12 * Math.max(Math.abs(row.old?.value ?? 0), Math.abs(row.new?.value ?? 0));
  const standing = causes.filter((c) => c.effect === null || Math.abs(c.effect) > least);
  if (row.difference === null) return { ...row, causes: standing.length === 0 ? [...causes] : standing };
  const sum = standing.reduce((s, c) => s + (c.effect ?? 0), 0);
  const rest = row.difference - sum;
  const complete = standing.every((c) => c.effect !== null);
  return {
    ...row,
    causes: standing,
    together: complete && Math.abs(rest) <= Math.max(least, 1e-9 * Math.abs(row.difference)) ? 0 : rest,
  };
}
