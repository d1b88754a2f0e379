import assert from 'node:assert/strict';
import { parse as parseCsv } from 'csv-parse/sync';
import { ledgerCsv, ledgerHtml, ledgerMarkdown, ledgerTsv } from '../../../server/src/presentation/plot/ledgerTables';
import type { Ledger, LedgerRow } from '../../../server/src/protocol/view';
import { ledgerColumns } from '../../../server/src/presentation/plot/ledger';
import { xmlProblem } from './xml';

function row(over: Partial<LedgerRow>): LedgerRow {
  return {
    id: 'First.loss',
    statement: 'step First',
    name: 'First',
    kind: 'step',
    quantity: 'loss',
    value: '14.80 ± 0.04 %',
    number: 14.797_123_456_789,
    unit: '%',
    basis: 'initial',
    state: '',
    since: '',
    sinceMoved: false,
    limit: 'met (14..15 %)',
    verdict: 'met',
    severity: null,
    main: true,
    details: [],
    ...over,
  };
}

const hostile = '<img src=x onerror="alert(1)">, "q"\t\r\n| `x` \u0007';
const ledger: Ledger = {
  columns: ledgerColumns,
  rows: [row({}), row({ name: hostile, value: 'failed', number: null, unit: '', limit: 'a; b' })],
};

describe('results copied as cells', () => {
  it('are one line a row with as many tabs, the number at full precision beside the value', () => {
    const lines = ledgerTsv(ledger).trimEnd().split('\n');
    assert.equal(lines.length, 3);
    assert.deepEqual(
      lines.map((l) => l.split('\t').length),
      [9, 9, 9],
    );
    assert.equal(lines[0], 'Name\tQuantity\tValue\tNumber\tUnit\tBasis\tState\tSince HEAD\tLimit');
    assert.equal(lines[1], 'First\tloss\t14.80 ± 0.04 %\t14.797123456789\t%\tinitial\t\t\tmet (14..15 %)');
    assert.ok(!lines[2].includes('\r'));
  });

  it('are RFC 4180 as another reader takes it, with every cell as it was', () => {
    const text = ledgerCsv(ledger);
    assert.ok(text.endsWith('\r\n'));
    const records = parseCsv(text, { delimiter: ',', record_delimiter: '\r\n' }) as unknown as string[][];
    assert.equal(records.length, 3);
    assert.deepEqual(records[1], [
      'First',
      'loss',
      '14.80 ± 0.04 %',
      '14.797123456789',
      '%',
      'initial',
      '',
      '',
      'met (14..15 %)',
    ]);
    assert.equal(records[2][0], hostile);
    assert.equal(records[2][3], '');
  });

  it('are a table in HTML whose text is text', () => {
    const html = ledgerHtml(ledger);
    assert.equal(xmlProblem(html), null);
    assert.ok(!html.includes('<img'));
    assert.equal([...html.matchAll(/<tr>/g)].length, 3);
    assert.equal([...html.matchAll(/<t[hd][ >]/g)].length, 27);
    assert.ok(html.includes('<td align="right">14.797123456789</td>'));
  });

  it('are a pipe table in Markdown, without columns that are empty', () => {
    const lines = ledgerMarkdown(ledger).trimEnd().split('\n');
    assert.equal(lines.length, 4);
    assert.equal(lines[0], '| Name | Quantity | Value | Basis | Limit |');
    const unescaped = (line: string): number => [...line.matchAll(/(?<!\\)\|/g)].length;
    assert.deepEqual(lines.map(unescaped), [6, 6, 6, 6]);
    assert.ok(!lines[3].includes('<img'));
  });

  it('keep the order and the choice of rows they are given', () => {
    const turned = { ...ledger, rows: [...ledger.rows].reverse() };
    assert.match(ledgerTsv(turned).split('\n')[2], /^First\t/);
    assert.equal(ledgerTsv({ ...ledger, rows: [] }).split('\n').length, 2);
  });
});
