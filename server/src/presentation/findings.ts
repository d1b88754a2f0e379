import type { PlacedFinding, Snapshot } from '../engine/snapshot';
import type { Severity } from '../findings/finding';
import { csv } from './csv';
import { markdownTable } from './markdownTable';
import { inTextOrder } from './order';
import type { Paint } from './paint';
import { unpainted } from './paint';
import { plural } from './plural';
import { findingObject } from './resultsJson';
import { sourceExcerpt } from './sourceExcerpt';
import { SnapshotTexts } from './statements';
import { version } from './version';
import { oneLine } from './width';

export const findingsSchema = 'thermogloss-findings/1';

/** `path:line:column`, from 1. */
export function placeOf(finding: Pick<PlacedFinding, 'file' | 'span'>, texts: SnapshotTexts): string {
  const { line, column } = texts.positions(finding.file).at(finding.span.start);
  return `${texts.path(finding.file)}:${line}:${column}`;
}

/** One finding on one line, for the standard error stream. */
export function findingLine(finding: PlacedFinding, texts: SnapshotTexts, paint: Paint = unpainted): string {
  const severity = finding.allowed === null ? finding.severity : `allowed ${finding.severity}`;
  const style = finding.allowed === null ? finding.severity : 'faint';
  const head = `${placeOf(finding, texts)}: ${paint(style, severity)}: ${oneLine(finding.message)}`;
  return `${head} ${paint('faint', `[${finding.code}]`)}`;
}

/** Findings for a terminal: place, message, the line with marks, related places, why it was allowed, what would mend it. */
export function findingsText(snapshot: Snapshot, paint: Paint = unpainted): string {
  const texts = new SnapshotTexts(snapshot);
  const lines = inTextOrder(snapshot.findings).flatMap((f) => [
    findingLine(f, texts, paint),
    ...sourceExcerpt(texts.positions(f.file), f.span, (marks) =>
      paint(f.allowed === null ? f.severity : 'faint', marks),
    ),
    ...f.related.map((r) => `  see ${placeOf(r, texts)}: ${oneLine(r.message)}`),
    ...(f.allowed === null ? [] : [`  allowed because: ${oneLine(f.allowed)}`]),
    ...(f.allowed === null ? f.fixes.map((fix) => `  could be mended: ${oneLine(fix.title)}`) : []),
    '',
  ]);
  return lines.map((l) => `${l}\n`).join('');
}

/** One gloss as a plain object after `findings.schema.json`; the finding objects are those of `results --format json`. */
export function findingsJson(snapshot: Snapshot): object {
  const texts = new SnapshotTexts(snapshot);
  return {
    schema: findingsSchema,
    program: version,
    gloss: snapshot.gloss.display,
    findings: inTextOrder(snapshot.findings).map((f) => findingObject(f, texts)),
  };
}

const columns = ['file', 'line', 'column', 'end line', 'end column', 'severity', 'code', 'message', 'allowed'] as const;

export function findingsCsv(snapshots: readonly Snapshot[]): string {
  return csv([
    ['gloss', ...columns],
    ...rowsOf(snapshots).map(({ snapshot, finding, texts }) => {
      const start = texts.positions(finding.file).at(finding.span.start);
      const end = texts.positions(finding.file).at(finding.span.end);
      const { severity, code, message, allowed } = finding;
      const place = [texts.path(finding.file), start.line, start.column, end.line, end.column];
      return [snapshot.gloss.display, ...place, severity, code, message, allowed];
    }),
  ]);
}

export function findingsMarkdown(snapshots: readonly Snapshot[]): string {
  const rows = rowsOf(snapshots).map(({ finding, texts }) => [
    placeOf(finding, texts),
    finding.severity,
    finding.code,
    finding.message,
    finding.allowed ?? '',
  ]);
  if (rows.length === 0) return `${findingsSummary(snapshots)}\n`;
  const headers = ['place', 'severity', 'finding', 'message', 'allowed because'];
  return `${[
    ...markdownTable(
      headers.map((header) => ({ header, align: 'left' })),
      rows,
    ),
    '',
    findingsSummary(snapshots),
  ].join('\n')}\n`;
}

/** `1 error, 2 warnings, 1 allowed in 3 glosses`. */
export function findingsSummary(snapshots: readonly Snapshot[]): string {
  const all = snapshots.flatMap((s) => s.findings);
  const standing = all.filter((f) => f.allowed === null);
  const count = (severity: Severity): number => standing.filter((f) => f.severity === severity).length;
  const parts = [
    plural(count('error'), 'error'),
    plural(count('warning'), 'warning'),
    plural(count('note'), 'note'),
    all.length > standing.length ? `${all.length - standing.length} allowed` : null,
  ].filter((p) => p !== null);
  return `${parts.length === 0 ? 'no findings' : parts.join(', ')} in ${plural(snapshots.length, 'gloss', 'glosses')!}`;
}

function rowsOf(
  snapshots: readonly Snapshot[],
): { snapshot: Snapshot; finding: PlacedFinding; texts: SnapshotTexts }[] {
  return snapshots.flatMap((snapshot) => {
    const texts = new SnapshotTexts(snapshot);
    return inTextOrder(snapshot.findings).map((finding) => ({ snapshot, finding, texts }));
  });
}
