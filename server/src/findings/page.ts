import { significantText } from './numberText';
import { coverageTable } from './coverage';
import type { FindingExample, FindingLimit, FindingRecord } from './record';
import { findingTable } from './table';

const severityWords = { error: 'error', warning: 'warning', note: 'note' } as const;

const familyWords = {
  syntax: 'Syntax',
  names: 'Names',
  units: 'Units',
  data: 'Data',
  windows: 'Windows',
  method: 'Method, crucible and blank',
  results: 'Results',
  approval: 'Approvals and allowances',
} as const;

/** File name and Markdown text of each page: `finding-CODE.md`, the index `findings.md`, the rules `findings-coverage.md`. */
export function findingPages(): ReadonlyMap<string, string> {
  const pages = new Map<string, string>();
  pages.set('findings.md', indexPage());
  pages.set('findings-coverage.md', coveragePage());
  for (const record of findingTable.values()) pages.set(pageName(record.code), findingPage(record));
  return pages;
}

export function pageName(code: string): string {
  return `finding-${code}.md`;
}

/** The explanation with `{0}`, `{1}` … replaced by the limits of the record. */
export function explanationText(record: FindingRecord): string {
  return record.explanation.replace(/\{(\d+)\}/g, (_, index: string) => limitText(record.limits[Number(index)]));
}

export function limitText(limit: FindingLimit): string {
  const number = significantText(limit.value, 4);
  return limit.unit === '' ? number : `${number} ${limit.unit}`;
}

function findingPage(record: FindingRecord): string {
  const lines = [
    `# ${record.title}`,
    '',
    `\`${record.code}\` · ${severityWords[record.severity]} · ${effectWords(record)}`,
    '',
    explanationText(record),
    '',
  ];
  if (record.limits.length > 0) {
    lines.push('## Limits', '', '| limit | meaning | set by |', '|---|---|---|');
    record.limits.forEach((limit, index) => {
      const set = index === 0 ? `\`rule ${record.code} ${limitText(limit)} because "…"\`` : 'fixed';
      lines.push(`| ${limitText(limit)} | ${limit.meaning} | ${set} |`);
    });
    lines.push('');
  }
  lines.push('## Fires', '', ...exampleLines(record.fires), '## Stays silent', '', ...exampleLines(record.silent));
  lines.push('## Accepting it', '', acceptance(record), '');
  if (record.rules.length > 0) {
    lines.push(`Review rules: ${record.rules.join(', ')} (see [the list](findings-coverage.md)).`, '');
  }
  return lines.join('\n');
}

function effectWords(record: FindingRecord): string {
  if (record.effect === 'fails') return 'the value fails';
  return record.effect === 'apparent' ? 'the value becomes *apparent*' : 'the value stands';
}

function acceptance(record: FindingRecord): string {
  if (!record.allowable) return 'It cannot be allowed: correct the line.';
  const kept =
    record.effect === 'apparent'
      ? ' The value then counts in a requirement when all its reasons are allowed.'
      : record.effect === 'fails'
        ? ' The value stays failed.'
        : '';
  return `With a reason: \`allow ${record.code} because "…"\` in the statement or on a line of its own.${kept}`;
}

function exampleLines(example: FindingExample): string[] {
  const lines = ['```gloss', example.gloss, '```', ''];
  if (example.data !== null) lines.push(`Where: ${example.data}.`, '');
  return lines;
}

function indexPage(): string {
  const lines = [
    '# Findings',
    '',
    'One page a code. An error stops a value or says that a line was not understood; a warning needs a look or a written reason; a note informs.',
    '',
  ];
  for (const [family, words] of Object.entries(familyWords)) {
    lines.push(`## ${words}`, '', '| code | | meaning | value |', '|---|---|---|---|');
    for (const record of findingTable.values()) {
      if (record.family !== family) continue;
      const link = `[${record.code}](${pageName(record.code)})`;
      lines.push(`| ${link} | ${severityWords[record.severity]} | ${record.title} | ${effectWords(record)} |`);
    }
    lines.push('');
  }
  return lines.join('\n');
}

function coveragePage(): string {
  const rows = coverageTable();
  const built = rows.filter((row) => row.codes.length > 0).length;
  const lines = [
    '# Review rules and the codes that hold them',
    '',
    `Of ${rows.length} rules ${built} are held by a code. For the others the last column names the data they need that do not exist yet; beside a code it names the part left out.`,
    '',
    '| rule | about | codes | lacks |',
    '|---|---|---|---|',
  ];
  for (const row of rows) {
    const links = row.codes.map((code) => `[${code}](${pageName(code)})`).join(', ');
    lines.push(`| ${row.rule} | ${row.about} | ${links} | ${row.lacks ?? ''} |`);
  }
  lines.push('');
  return lines.join('\n');
}
