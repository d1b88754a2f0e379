import type { Snapshot } from '../engine/snapshot';
import type { Result } from '../evaluation/result';
import { csv } from './csv';
import { mainResults } from './mainQuantities';
import { markdownTable, markdownText } from './markdownTable';
import type { Paint, Style } from './paint';
import { unpainted } from './paint';
import { inReadingOrder } from './readingOrder';
import { shownValue, shownWindow, stateAndReasons, valueAndU } from './shown';
import { overrides, SnapshotTexts } from './statements';
import { textTable } from './textTable';
import { verdictCells, verdictHeaders, verdictLines } from './verdicts';
import { plainNumber } from './plainNumber';

export interface TableOptions {
  /** Every result, not only the main quantities. */
  readonly all: boolean;
}

const headers = ['result', 'value ± u (k = 1)', 'segment', 'window', 'state'] as const;

export function chosenResults(snapshot: Snapshot, { all }: TableOptions): readonly Result[] {
  const results = inReadingOrder(snapshot, snapshot.results);
  if (all) return results;
  const main = mainResults(snapshot);
  return results.filter((r) => main.has(r.id));
}

/** One gloss for a terminal: a line on the run, a row a result, verdicts below. */
export function oneGlossText(snapshot: Snapshot, options: TableOptions, paint: Paint = unpainted): string {
  const results = chosenResults(snapshot, options);
  const lines = [paint('strong', snapshot.gloss.display) + runWords(snapshot), ''];
  if (results.length === 0) lines.push('no results');
  else {
    lines.push(
      ...textTable(
        headers.map((h, c) => ({ header: [h], align: c === 1 ? 'plus-minus' : 'left' })),
        results.map((r) => ({ cells: resultCells(r), styles: stateStyles(r) })),
        paint,
      ),
    );
  }
  const verdicts = verdictLines(snapshot, paint);
  if (verdicts.length > 0) lines.push('', ...verdicts);
  const notes = overrideLines(snapshot);
  if (notes.length > 0) lines.push('', ...notes);
  return `${lines.join('\n')}\n`;
}

export function oneGlossMarkdown(snapshot: Snapshot, options: TableOptions): string {
  const lines = [`**${markdownText(snapshot.gloss.display)}**${markdownText(runWords(snapshot))}`, ''];
  const results = chosenResults(snapshot, options);
  if (results.length === 0) lines.push('no results');
  else {
    lines.push(
      ...markdownTable(
        headers.map((header, c) => ({ header, align: c === 1 ? 'right' : 'left' })),
        results.map(resultCells),
      ),
    );
  }
  if (snapshot.requirements.length > 0) {
    const texts = new SnapshotTexts(snapshot);
    const columns = verdictHeaders.map((header, c) => ({ header, align: c === 2 ? 'right' : 'left' }) as const);
    lines.push(
      '',
      ...markdownTable(
        columns,
        snapshot.requirements.map((r) => verdictCells(r, texts)),
      ),
    );
  }
  const notes = overrideLines(snapshot);
  if (notes.length > 0) lines.push('', ...notes.map((n) => `- ${markdownText(n)}`));
  return `${lines.join('\n')}\n`;
}

export const oneGlossCsvHeader = [
  'gloss',
  'line',
  'result',
  'state',
  'value',
  'u (k = 1)',
  'below',
  'unit',
  'basis',
  'segment',
  'window from',
  'window to',
  'window unit',
  'k',
  'reasons',
] as const;

/** One gloss as records, a row a result. */
export function oneGlossCsv(snapshot: Snapshot, options: TableOptions): string {
  const texts = new SnapshotTexts(snapshot);
  const rows = chosenResults(snapshot, options).map((r) => {
    const shown = r.value === null ? null : valueAndU(r.value, r.uncertainty);
    return [
      snapshot.gloss.display,
      texts.line(r.file, r.statement),
      r.id,
      r.state,
      shown?.value ?? null,
      r.uncertainty === 0 ? '0' : (shown?.u?.replace('?', '') ?? null),
      r.limit === null ? null : plainNumber(r.limit, 2),
      r.unit.text,
      r.basis,
      r.segment,
      r.window === null ? null : plainNumber(r.window.from, 7),
      r.window === null ? null : plainNumber(r.window.to, 7),
      r.window?.unit ?? null,
      plainNumber(r.k, 3),
      r.reasons.join('; '),
    ];
  });
  return csv([oneGlossCsvHeader, ...rows]);
}

function resultCells(r: Result): string[] {
  const empty = r.value === null && r.state !== 'not-detected';
  return [r.id, empty ? '' : shownValue(r), r.segment ?? '', shownWindow(r.window), stateAndReasons(r)];
}

function stateStyles(r: Result): Record<number, Style> {
  if (r.state === 'number' || r.state === 'indicated') return { 4: 'faint' };
  return { 4: r.state === 'failed' ? 'error' : 'warning' };
}

/** `: b.csv, 5821 points, heating 1, hold 1`. */
function runWords(snapshot: Snapshot): string {
  const { run } = snapshot;
  if (run === null) return snapshot.gloss.tree.role === 'method' ? ': a method, no run' : ': no run read';
  const segments = run.segments.map((s) => s.name).join(', ');
  return `: ${run.display}, ${run.points} points${segments === '' ? '' : `, ${segments}`}`;
}

export function overrideLines(snapshot: Snapshot): string[] {
  return overrides(snapshot).map(
    ({ id, because }) =>
      `differs from its method: ${id.replace(/^override /, '')}${because === null ? '' : ` (${because})`}`,
  );
}
