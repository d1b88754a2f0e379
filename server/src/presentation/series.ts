import type { Snapshot } from '../engine/snapshot';
import type { Requirement, Result } from '../evaluation/result';
import type { TableOptions } from './oneGloss';
import { chosenResults } from './oneGloss';
import { overrides } from './statements';
import type { SampleStatistics } from './statistics';
import { sampleStatistics } from './statistics';

/** Many runs as one table: a row a run, a column a result, then a column a requirement; n, mean and s below. */
export interface Series {
  readonly columns: readonly SeriesColumn[];
  readonly requirements: readonly string[];
  readonly rows: readonly SeriesRow[];
  /** By column. */
  readonly statistics: readonly ColumnStatistics[];
}

/** Results of one id stand in one column only where unit and basis agree. */
export interface SeriesColumn {
  readonly id: string;
  readonly unit: string;
  readonly basis: string | null;
}

export interface ColumnStatistics extends SampleStatistics {
  readonly apparent: boolean;
}

export interface SeriesRow {
  readonly gloss: string;
  readonly run: string | null;
  readonly sample: string | null;
  /** What differs from the method, with its reason. */
  readonly overrides: readonly { readonly id: string; readonly because: string | null }[];
  readonly cells: readonly (Result | null)[];
  readonly verdicts: readonly (Requirement | null)[];
}

export function seriesOf(snapshots: readonly Snapshot[], options: TableOptions): Series {
  const chosen = snapshots.map((s) => chosenResults(s, options));
  const columns = columnsOf(chosen.flat());
  const requirements = [...new Set(snapshots.flatMap((s) => s.requirements.map(requirementLabel)))];
  const rows = snapshots.map((snapshot, i): SeriesRow => ({
    gloss: snapshot.gloss.display,
    run: snapshot.run?.display ?? null,
    sample: sampleOf(snapshot),
    overrides: overrides(snapshot),
    cells: columns.map((column) => chosen[i].find((r) => columnOf(columns, r) === column) ?? null),
    verdicts: requirements.map((label) => snapshot.requirements.find((r) => requirementLabel(r) === label) ?? null),
  }));
  return { columns, requirements, rows, statistics: columns.map((_, c) => columnStatistics(rows, c)) };
}

/** Columns in the order in which the ids first appear. */
function columnsOf(results: readonly Result[]): SeriesColumn[] {
  const byId = new Map<string, SeriesColumn[]>(results.map((r) => [r.id, []]));
  for (const r of [...results.filter((x) => !valueless(x)), ...results.filter(valueless)]) {
    const columns = byId.get(r.id)!;
    if (columns.length > 0 && (valueless(r) || columns.some((c) => fits(c, r)))) continue;
    columns.push({ id: r.id, unit: r.unit.text, basis: r.basis });
  }
  return [...byId.values()].flat();
}

function columnOf(columns: readonly SeriesColumn[], r: Result): SeriesColumn | undefined {
  return columns.find((c) => c.id === r.id && (valueless(r) || fits(c, r)));
}

function fits(column: SeriesColumn, r: Result): boolean {
  return column.unit === r.unit.text && column.basis === r.basis;
}

/** A failed result may know neither unit nor basis: it stands in the first column of its name. */
function valueless(r: Result): boolean {
  return r.value === null && r.limit === null;
}

function columnStatistics(rows: readonly SeriesRow[], c: number): ColumnStatistics {
  const present = rows.map((row) => row.cells[c]).filter((r) => r !== null);
  const numbers = present.filter((r) => r.value !== null);
  return {
    ...sampleStatistics(numbers.map((r) => r.value!)),
    // Leaving out what was not detected shifts the mean: it is no plain number then.
    apparent: numbers.some((r) => r.state === 'apparent') || present.some((r) => r.state === 'not-detected'),
  };
}

export function requirementLabel(r: Requirement): string {
  return r.name ?? r.text;
}

function sampleOf(snapshot: Snapshot): string | null {
  for (const { statement } of snapshot.gloss.tree.statements) {
    if (statement?.kind === 'run') return statement.sample;
  }
  return null;
}
