import assert from 'node:assert/strict';
import { parse } from 'csv-parse/sync';
import { findingsCsv, findingsMarkdown, findingsSummary, findingsText } from '../../server/src/presentation/findings';
import { finding, glossText, snapshot } from './snapshots';

describe('findings as text', () => {
  it('name place, severity, message and code, and mark the place in its line', () => {
    assert.equal(
      findingsText(snapshot()),
      [
        'b.gloss:3:12: warning: The curve falls by 0.02 %/K at 790 °C. [window-edge-not-level]',
        '  3 | step First 640..790 °C',
        '    |            ^^^^^^^^^^^',
        '',
        '',
      ].join('\n'),
    );
  });

  it('keep the marks below wide characters and tabs', () => {
    const text = 'run "試料.csv"\tx\n';
    const start = text.indexOf('x');
    const [, line, marks] = findingsText(
      snapshot({ findings: [finding({ span: { start, end: start + 1 } })] }, text),
    ).split('\n');
    // The two ideographs take two columns each.
    assert.equal(marks.indexOf('^'), line.indexOf('x') + 2);
  });

  it('mark a span over lines to the end of its first, and an empty one with one mark', () => {
    const over = findingsText(snapshot({ findings: [finding({ span: { start: 0, end: 40 } })] }));
    assert.match(over, / \^{11}\n/);
    const empty = findingsText(snapshot({ findings: [finding({ span: { start: 3, end: 3 } })] }));
    assert.match(empty, / {4}\| {4}\^\n/);
  });

  it('say why one was allowed, what else it is about, and what would mend it', () => {
    const span = { start: 0, end: 3 };
    const related = [{ file: 'gloss' as const, span, message: 'the run begins here' }];
    const fixes = [{ title: 'End it at 780 °C', safe: false, edits: [] }];
    const standing = findingsText(snapshot({ findings: [finding({ related, fixes })] }));
    assert.ok(standing.includes('  see b.gloss:1:1: the run begins here\n'));
    assert.ok(standing.includes('  could be mended: End it at 780 °C\n'));
    const allowed = findingsText(snapshot({ findings: [finding({ fixes, allowed: 'agreed with the customer' })] }));
    assert.ok(
      allowed.includes('allowed warning: ') && allowed.includes('  allowed because: agreed with the customer\n'),
    );
    assert.ok(!allowed.includes('mended'));
  });

  it('let no control character of a message through', () => {
    const text = findingsText(snapshot({ findings: [finding({ message: 'a\u001b]0;b\u0007' })] }));
    assert.ok(!text.includes('\u001b') && !text.includes('\u0007') && text.includes('a\uFFFD]0;b'));
  });
});

describe('findings as tables', () => {
  it('are one record each in CSV', () => {
    const csv = findingsCsv([snapshot(), snapshot({ findings: [] })]);
    const records = parse(csv, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
    assert.equal(records.length, 1);
    assert.deepEqual(
      [records[0].file, records[0].line, records[0].column, records[0]['end column']],
      ['b.gloss', '3', '12', '23'],
    );
    assert.equal(records[0].code, 'window-edge-not-level');
  });

  it('are one row each in Markdown, and a sentence where there is none', () => {
    assert.ok(findingsMarkdown([snapshot()]).includes('| b.gloss:3:12 | warning | window-edge-not-level |'));
    assert.equal(findingsMarkdown([snapshot({ findings: [] })]), 'no findings in 1 gloss\n');
  });

  it('are counted by severity, the allowed apart', () => {
    const all = [
      finding(),
      finding({ severity: 'error' }),
      finding({ severity: 'error' }),
      finding({ allowed: 'yes' }),
    ];
    assert.equal(
      findingsSummary([snapshot({ findings: all }), snapshot({ findings: [] }, glossText)]),
      '2 errors, 1 warning, 1 allowed in 2 glosses',
    );
  });
});
