import type { Result } from '../evaluation/result';
import { csv } from './csv';
import { plainNumber } from './plainNumber';
import type { Series } from './series';
import { apparentMark, headUnit, statisticsRows } from './seriesStatistics';
import { valueAndU } from './shown';

/** RFC 4180; three fields a result: value, u (k = 1), state. The last three records are n, mean and s. */
export function seriesCsv(series: Series): string {
  const header = [
    'gloss',
    'run',
    'sample',
    'overrides',
    ...series.columns.flatMap((c) => [`${c.id} / ${headUnit(c)}`, `u(${c.id}) / ${c.unit}`, `${c.id} state`]),
    ...series.requirements,
  ];
  const rows = series.rows.map((row) => [
    row.gloss,
    row.run,
    row.sample,
    row.overrides.map((o) => o.id.replace(/^override /, '')).join('; '),
    ...row.cells.flatMap(csvCells),
    ...row.verdicts.map((v) => v?.verdict ?? null),
  ]);
  const [n, mean, s] = statisticsRows(series).map(([name, ...cells]) => [
    name,
    null,
    null,
    null,
    ...cells.flatMap((c) => [c.replace(apparentMark, '') || null, null, null]),
    ...series.requirements.map(() => null),
  ]);
  return csv([header, ...rows, n, mean, s]);
}

function csvCells(r: Result | null): (string | null)[] {
  if (r === null) return [null, null, null];
  if (r.value === null) return [r.limit === null ? null : `<${plainNumber(r.limit, 2)}`, null, r.state];
  const { value, u } = valueAndU(r.value, r.uncertainty);
  return [value, u === '?' ? null : (u ?? '0'), r.state];
}
