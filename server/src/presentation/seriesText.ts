import type { Result } from '../evaluation/result';
import { markdownTable, markdownText } from './markdownTable';
import type { Paint, Style } from './paint';
import { unpainted } from './paint';
import { plainNumber } from './plainNumber';
import type { Series, SeriesRow } from './series';
import { apparentMark, headUnit, statisticsRows } from './seriesStatistics';
import { plusMinus, stateWords } from './shown';
import type { TextColumn, TextRow } from './textTable';
import { textTable } from './textTable';
import { verdictStyle } from './verdicts';
import { displayWidth } from './width';

const indicatedMark = '^';
const overrideMark = '*';

/** The table for a terminal; `columns` is its width, where known, and wider tables are set in several blocks. */
export function seriesText(series: Series, columns: number | null, paint: Paint = unpainted): string {
  const lines: string[] = [];
  for (const block of blocks(series, columns)) {
    if (lines.length > 0) lines.push('');
    lines.push(...textTable([{ header: ['gloss', ''], align: 'left' }, ...block.columns], block.rows, paint));
  }
  const notes = legend(series);
  return `${[...lines, '', ...notes].join('\n')}\n`;
}

export function seriesMarkdown(series: Series): string {
  const columns = [
    { header: 'gloss', align: 'left' as const },
    ...series.columns.map((c) => ({ header: `${c.id} ± u / ${headUnit(c)}`, align: 'right' as const })),
    ...series.requirements.map((r) => ({ header: r, align: 'left' as const })),
  ];
  const rows = series.rows.map((row) => [rowName(row), ...row.cells.map(cellText), ...verdictTexts(row)]);
  const below = statisticsRows(series).map((cells) => [...cells, ...series.requirements.map(() => '')]);
  const notes = legend(series).map((n) => `- ${markdownText(n)}`);
  return `${[...markdownTable(columns, [...rows, ...below]), '', ...notes].join('\n')}\n`;
}

interface Part {
  readonly column: TextColumn;
  readonly above: readonly string[];
  readonly below: readonly string[];
  readonly styles: readonly (Style | undefined)[];
}

interface Block {
  readonly columns: readonly TextColumn[];
  readonly rows: readonly (TextRow | null)[];
}

function blocks(series: Series, width: number | null): Block[] {
  const names = [...series.rows.map(rowName), 'mean'];
  const statistics = statisticsRows(series);
  const results = series.columns.map((column, c): Part => ({
    column: { header: [column.id, `± u / ${headUnit(column)}`], align: 'plus-minus' },
    above: series.rows.map((row) => cellText(row.cells[c])),
    below: statistics.map((row) => row[c + 1]),
    styles: series.rows.map((row) => (row.cells[c]?.state === 'failed' ? 'error' : undefined)),
  }));
  const verdicts = series.requirements.map((label, i): Part => ({
    column: { header: [label, ''], align: 'left' },
    above: series.rows.map((row) => row.verdicts[i]?.verdict ?? ''),
    below: ['', '', ''],
    styles: series.rows.map((row) => (row.verdicts[i] ? verdictStyle[row.verdicts[i].verdict] : undefined)),
  }));
  const first = Math.max(...names.map(displayWidth));
  const groups: Part[][] = [[]];
  let used = first;
  for (const part of [...results, ...verdicts]) {
    const needs = 4 + Math.max(...[...part.column.header, ...part.above, ...part.below].map(displayWidth));
    if (width !== null && used + needs > width && groups.at(-1)!.length > 0) {
      groups.push([]);
      used = first;
    }
    groups.at(-1)!.push(part);
    used += needs;
  }
  return groups.map((group) => ({
    columns: group.map((p) => p.column),
    rows: [
      ...series.rows.map((row, r): TextRow => {
        const styles = Object.fromEntries(group.flatMap((p, c) => (p.styles[r] ? [[c + 1, p.styles[r]]] : [])));
        return { cells: [rowName(row), ...group.map((p) => p.above[r])], styles };
      }),
      null,
      ...['n', 'mean', 's'].map((name, i) => ({ cells: [name, ...group.map((p) => p.below[i])] })),
    ],
  }));
}

function cellText(r: Result | null): string {
  if (r === null) return '';
  if (r.value === null) return r.limit === null ? stateWords[r.state] : `< ${plainNumber(r.limit, 2)}`;
  const text = plusMinus(r.value, r.uncertainty);
  if (r.state === 'apparent') return `${apparentMark}${text}`;
  return r.state === 'indicated' ? `${text}${indicatedMark}` : text;
}

function verdictTexts(row: SeriesRow): string[] {
  return row.verdicts.map((v) => v?.verdict ?? '');
}

function rowName(row: SeriesRow): string {
  return row.overrides.length > 0 ? `${row.gloss} ${overrideMark}` : row.gloss;
}

function legend(series: Series): string[] {
  const cells = series.rows.flatMap((row) => row.cells);
  const lines = ['± u: standard uncertainty, k = 1; s: standard deviation of the runs; n: runs with a value'];
  if (cells.some((r) => r?.state === 'apparent') || series.statistics.some((s) => s.apparent)) {
    lines.push(
      `${apparentMark} apparent: a finding stands against it, or a run below detection was left out of the mean`,
    );
  }
  if (cells.some((r) => r?.state === 'indicated')) {
    lines.push(`${indicatedMark} indicated: outside what the run states as calibrated`);
  }
  for (const row of series.rows) {
    for (const { id, because } of row.overrides) {
      const reason = because === null ? '' : ` (${because})`;
      lines.push(`${overrideMark} ${row.gloss} differs from its method: ${id.replace(/^override /, '')}${reason}`);
    }
  }
  return lines;
}
