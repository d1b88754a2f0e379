import type { Snapshot } from '../engine/snapshot';
import { distinctFindings, type DistinctFinding } from './distinctFindings';
import { findingsSummary } from './findings';
import { rank } from './order';

/** Of each severity a forge shows ten annotations a step; with ten in all none is lost to another. */
export const mostAnnotations = 10;

const words = { error: 'error', warning: 'warning', note: 'notice' } as const;

/**
 * Findings that stand as workflow commands of GitHub Actions (`::error file=…,line=…::message`, after GitHub's page
 * "Workflow commands for GitHub Actions"), the worst ten first; then one line that counts all and says how many are left
 * out. Files are relative to the root, lines and columns from 1, ends inclusive.
 */
export function findingsGithub(snapshots: readonly Snapshot[]): string {
  const standing = distinctFindings(snapshots).filter(({ finding }) => finding.allowed === null);
  const worst = [...standing].sort((a, b) => rank[a.finding.severity] - rank[b.finding.severity]);
  const shown = worst.slice(0, mostAnnotations).map(command);
  const left = worst.length - shown.length;
  const rest = left === 0 ? '' : `; the ${left} not shown here: thermogloss check without --format github`;
  return [...shown, `${findingsSummary(snapshots)}${rest}`].map((line) => `${line}\n`).join('');
}

function command({ finding, texts, path }: DistinctFinding): string {
  const start = texts.positions(finding.file).at(finding.span.start);
  const end = texts.positions(finding.file).at(finding.span.end);
  // Columns are understood within one line only.
  const columns =
    end.line === start.line
      ? [
          ['col', String(start.column)],
          ['endColumn', String(Math.max(start.column, end.column - 1))],
        ]
      : [];
  const properties = [
    ['file', path],
    ['line', String(start.line)],
    ['endLine', String(end.line)],
    ...columns,
    ['title', finding.code],
  ];
  const written = properties.map(([name, value]) => `${name}=${escapedProperty(value)}`).join(',');
  return `::${words[finding.severity]} ${written}::${escapedData(finding.message)}`;
}

/** The message of a command: what would end its line, and the sign that escapes. */
export function escapedData(text: string): string {
  return text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

/** A value between `=` and `,` or `::`. */
export function escapedProperty(text: string): string {
  return escapedData(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}
