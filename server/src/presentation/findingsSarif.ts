import type { Snapshot } from '../engine/snapshot';
import { explanationText } from '../findings/page';
import { findingTable } from '../findings/table';
import type { LineColumns } from './lineColumns';
import { distinctFindings, type DistinctFinding } from './distinctFindings';
import { version } from './version';

/**
 * Findings as one SARIF 2.1.0 log (OASIS standard): a rule a code of the table, a result a finding; files relative to the
 * root (`%SRCROOT%`), regions those of the findings, in UTF-16 units with ends exclusive. What is allowed is suppressed in
 * source with its reason; what stands says that it is not (3.27.23).
 */
export function findingsSarif(snapshots: readonly Snapshot[]): object {
  const rules = [...findingTable.values()];
  const index = new Map(rules.map((r, i) => [r.code, i]));
  const fingerprints = new Ordinals();
  return {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'Thermogloss',
            semanticVersion: version,
            rules: rules.map((r) => ({
              id: r.code,
              shortDescription: { text: r.title },
              fullDescription: { text: explanationText(r) },
              defaultConfiguration: { level: r.severity },
              properties: { family: r.family },
            })),
          },
        },
        columnKind: 'utf16CodeUnits',
        originalUriBaseIds: { '%SRCROOT%': { description: { text: 'The folder that holds the glosses.' } } },
        results: distinctFindings(snapshots).map((distinct) => {
          const { finding } = distinct;
          const fingerprint = fingerprints.of(distinct);
          return {
            ruleId: finding.code,
            ruleIndex: index.get(finding.code),
            level: finding.severity,
            message: { text: wellFormed(finding.message) },
            locations: [location(distinct.path, distinct.texts.positions(finding.file), finding.span)],
            relatedLocations: finding.related.map((r, id) => ({
              id,
              message: { text: wellFormed(r.message) },
              ...location(distinct.texts.path(r.file), distinct.texts.positions(r.file), r.span),
            })),
            // The second name is the one that code scanning of GitHub matches alerts by.
            partialFingerprints: { 'statement/v1': fingerprint, primaryLocationLineHash: fingerprint },
            suppressions:
              finding.allowed === null ? [] : [{ kind: 'inSource', justification: wellFormed(finding.allowed) }],
          };
        }),
      },
    ],
  };
}

function location(
  path: string,
  positions: LineColumns,
  span: { readonly start: number; readonly end: number },
): { physicalLocation: object } {
  const start = positions.at(span.start);
  const end = positions.at(span.end);
  return {
    physicalLocation: {
      artifactLocation: { uri: path.split('/').map(uriPart).join('/'), uriBaseId: '%SRCROOT%' },
      region: { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column },
    },
  };
}

/** A name of a folder or file as part of a relative URI (RFC 3986). */
function uriPart(name: string): string {
  return encodeURIComponent(wellFormed(name));
}

/** Halves of surrogate pairs have no UTF-8 and no URI. */
function wellFormed(text: string): string {
  return text.replace(/\p{Cs}/gu, '\uFFFD');
}

/** File, statement, code and how many of that kind came before: the same when lines move. */
class Ordinals {
  private readonly counts = new Map<string, number>();

  of({ finding, texts, path }: DistinctFinding): string {
    const statement = texts.statementAt(finding.file, finding.span.start);
    const line = texts.positions(finding.file).at(finding.span.start).line;
    const where = statement?.id ?? texts.positions(finding.file).line(line).trim();
    const key = [path, where, finding.code].map(wellFormed).join('|');
    const ordinal = (this.counts.get(key) ?? 0) + 1;
    this.counts.set(key, ordinal);
    return `${key}|${ordinal}`;
  }
}
