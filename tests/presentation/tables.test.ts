import assert from 'node:assert/strict';
import { parse } from 'csv-parse/sync';
import { csv } from '../../server/src/presentation/csv';
import { markdownTable, markdownText } from '../../server/src/presentation/markdownTable';
import { textTable } from '../../server/src/presentation/textTable';
import { displayWidth, oneLine } from '../../server/src/presentation/width';
import { seeded } from '../support/random';

describe('CSV', () => {
  it('is read back by an independent reader (csv-parse, RFC 4180), whatever the fields hold', () => {
    const random = seeded(4180);
    const alphabet = ['a', ',', '"', '\r', '\n', ' ', ';', 'µ', '\t', "'", '=', '\u{1F9EA}'];
    for (let i = 0; i < 200; i++) {
      const field = (): string =>
        Array.from({ length: random.integer(6) }, () => alphabet[random.integer(12)]).join('');
      const records = Array.from({ length: 3 }, () => ['x' + field(), field(), field()]);
      // What may be a formula carries one apostrophe more, of which the next claim speaks.
      const read = parse(csv(records), { record_delimiter: '\r\n' }) as unknown as string[][];
      const plain = read.map((r, y) =>
        r.map((f, x) => (f === `'${records[y][x]}` && /^[=+\-@\t\r\n]/.test(records[y][x]) ? f.slice(1) : f)),
      );
      assert.deepEqual(plain, records);
    }
  });

  it('ends every record with CR LF and leaves an absent value empty', () => {
    assert.equal(csv([['a', null, 1.5]]), 'a,,1.5\r\n');
  });

  it('gives a text that a spreadsheet would compute an apostrophe, and no number', () => {
    for (const text of ['=cmd|x', '+1+cmd|x', '-2+3', '@SUM(1)', '-1 HYPERLINK(1)', '\t=1', '-', '+1;=1']) {
      const [[field]] = parse(csv([[text]]), { record_delimiter: '\r\n' }) as unknown as string[][];
      assert.equal(field, `'${text}`, text);
    }
    const numbers = [-1.5, '-1.5', '+3e-6', '-12.9 ± 1.6 %', '+0.12 %', '-30.1 ± 0.4 J/g', '-0.2 J/(g·K)', '+19.9 °C'];
    for (const value of [...numbers, 'a=b', "A. N. O'Ther", '—']) assert.equal(csv([[value]]), `${value}\r\n`);
  });
});

describe('a Markdown table', () => {
  it('shows bars, stars and tags as they are, on one line', () => {
    assert.equal(markdownText('a|b *c* <d>\n`e`'), 'a\\|b \\*c\\* &lt;d> \\`e\\`');
    assert.deepEqual(markdownTable([{ header: 'n', align: 'right' }], [['1|2']]), ['| n |', '| ---: |', '| 1\\|2 |']);
  });
});

describe('a text table', () => {
  it('aligns by the columns a terminal gives, not by the length of the text', () => {
    // Widths after Unicode Standard Annex 11: ideographs two, combining marks none.
    assert.equal(displayWidth('試料'), 4);
    assert.equal(displayWidth('e\u0301'), 1);
    assert.equal(displayWidth('\u{1F9EA}'), 2);
    assert.equal(displayWidth('°µ±·'), 4);
    const lines = textTable(
      [
        { header: ['a'], align: 'left' },
        { header: ['b'], align: 'left' },
      ],
      [{ cells: ['試料', '|'] }, { cells: ['e\u0301', '|'] }],
    );
    assert.deepEqual(
      lines.slice(1).map((l) => displayWidth(l.slice(0, l.indexOf('|')))),
      [6, 6],
    );
  });

  it('sets the ± of a column below each other', () => {
    const rows = ['14.797 ± 0.041 %', '742.3 ± 0.4 °C', '< 0.05 %', '3'].map((c) => ({ cells: [c] }));
    const lines = textTable([{ header: ['value'], align: 'plus-minus' }], rows);
    assert.equal(lines[1].indexOf('±'), lines[2].indexOf('±'));
  });

  it('leaves no blank at the end of a line, and paints without moving anything', () => {
    const columns = [
      { header: ['a'], align: 'left' as const },
      { header: ['state'], align: 'left' as const },
    ];
    const rows = [{ cells: ['x', ''] }, { cells: ['y', 'failed'], styles: { 1: 'error' as const } }];
    const plainLines = textTable(columns, rows);
    assert.ok(plainLines.every((l) => l === l.trimEnd()));
    const painted = textTable(columns, rows, (style, text) => (style === 'faint' ? text : `<${text}>`));
    assert.deepEqual(
      painted.map((l) => l.replace(/[<>]/g, '')),
      plainLines,
    );
    assert.ok(painted[2].includes('<failed>'));
  });

  it('lets no control character of a name reach the terminal', () => {
    assert.equal(oneLine('a\u001b[31mb\tc\r\nd\u009b'), 'a\uFFFD[31mb c d\uFFFD');
  });
});
