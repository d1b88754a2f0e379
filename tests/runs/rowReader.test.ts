import { strict as assert } from 'node:assert';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { RowBuffer } from '../../server/src/runs/reading/rowBuffer';
import { RowReader } from '../../server/src/runs/reading/rowReader';
import type { RowLayout } from '../../server/src/runs/reading/scanRows';
import type { BadCell } from '../../server/src/runs/run';
import { seeded, type Random } from '../support/random';

interface Table {
  readonly columns: Float64Array[];
  readonly rows: number;
  readonly bad: number;
  readonly first: readonly BadCell[];
  readonly empty: number;
}

const host = new MemoryHost();

async function scanned(text: string, layout: RowLayout, piece: number): Promise<Table & { irregular: number }> {
  const buffer = new RowBuffer(layout.width, 4);
  const reader = new RowReader(host, layout, buffer, 0);
  const bytes = Buffer.from(text, 'utf8');
  for (let from = 0; from < bytes.length; from += piece) await reader.push(bytes.subarray(from, from + piece));
  await reader.finish();
  return {
    columns: buffer.finish(),
    rows: buffer.rows,
    bad: buffer.counts.bad,
    first: buffer.firstBadCells(),
    empty: buffer.counts.empty,
    irregular: buffer.counts.irregular,
  };
}

/** The reference: csv-parse (behind the host) on the whole text, and `Number` on every cell. */
async function reference(text: string, layout: RowLayout): Promise<Table> {
  const delimiter = layout.separator < 0 ? null : String.fromCharCode(layout.separator);
  const { records, lines } = await host.parseDelimited(text, { delimiter });
  const columns: number[][] = Array.from({ length: layout.width }, () => []);
  const cells: BadCell[] = [];
  let empty = 0;
  records.forEach((fields, k) => {
    if (fields.every((field) => field.trim() === '')) return;
    layout.slots.forEach((slot, field) => {
      if (slot < 0) return;
      const written = (fields[field] ?? '').trim();
      // The point is no decimal sign in a file of decimal commas; names of special numbers and other bases are no cells.
      const plain = layout.decimal === ',' ? written.replaceAll('.', '?').replace(',', '.') : written;
      const value = plain === '' || /[a-df-z]/i.test(plain) ? NaN : Number(plain);
      columns[slot].push(Number.isFinite(value) ? value : NaN);
      if (written === '') empty++;
      else if (!Number.isFinite(value)) cells.push({ line: lines[k], field: field + 1, text: written });
    });
  });
  return {
    columns: columns.map((column) => Float64Array.from(column)),
    rows: columns[0].length,
    bad: cells.length,
    first: cells.slice(0, 20),
    empty,
  };
}

function bits(column: Float64Array): string {
  return Buffer.from(column.buffer, column.byteOffset, column.byteLength).toString('hex');
}

function assertSame(got: Table, expected: Table, text: string): void {
  const shown = JSON.stringify(text);
  assert.equal(got.rows, expected.rows, `rows of ${shown}`);
  got.columns.forEach((column, k) => assert.equal(bits(column), bits(expected.columns[k]), `column ${k} of ${shown}`));
  assert.equal(got.bad, expected.bad, `bad cells of ${shown}`);
  assert.deepEqual(got.first, expected.first, shown);
  assert.equal(got.empty, expected.empty, `empty cells of ${shown}`);
}

function pick<T>(random: Random, from: readonly T[]): T {
  return from[random.integer(from.length)];
}

function digits(random: Random, most: number): string {
  return Array.from({ length: 1 + random.integer(most) }, () => random.integer(10)).join('');
}

/** A cell that is a number, in one of the many ways to write it. */
function drawNumber(random: Random, decimal: string): string {
  const sign = pick(random, ['', '', '', '-', '-', '+']);
  const most = pick(random, [2, 4, 9, 17, 24]);
  const whole = pick(random, [digits(random, most), '0', '']);
  const places = whole === '' || random.uniform() < 0.7 ? decimal + digits(random, most) : pick(random, ['', decimal]);
  const exponent =
    random.uniform() < 0.25
      ? `${pick(random, ['e', 'E'])}${pick(random, ['', '+', '-'])}${digits(random, random.uniform() < 0.1 ? 3 : 2)}`
      : '';
  const padding = pick(random, ['', '', '', ' ', '  ']);
  return padding + sign + whole + places + exponent + pick(random, ['', '', ' ']);
}

const broken = [
  '#N/A',
  'NaN',
  'err',
  '-',
  '--',
  '1.2.3',
  '1e',
  '0x10',
  'Infinity',
  '1,5',
  '1.5',
  '.',
  '+',
  'e5',
  '5"3',
  '°',
];

function drawOdd(random: Random, delimiter: string): string {
  const quoted = ['"1"', '" 2 "', '""', '"say ""x"""', `"a${delimiter}b"`, '"two\nlines"', '"1e3" ', '"#N/A"'];
  return random.uniform() < 0.5 ? pick(random, broken) : pick(random, quoted);
}

interface Case {
  readonly text: string;
  readonly layout: RowLayout;
}

function drawCase(random: Random): Case {
  const delimiter = pick(random, [',', ';', '\t', '|', null]);
  const separator = delimiter ?? '  ';
  const decimal = delimiter === ',' ? '.' : pick(random, ['.', ',']);
  const width = 2 + random.integer(4);
  const oddShare = pick(random, [0, 0, 0.02, 0.2]);
  const emptyShare = delimiter === null ? 0 : pick(random, [0, 0, 0.1]);
  const rows = Array.from({ length: 1 + random.integer(25) }, () => {
    if (random.uniform() < 0.02) return pick(random, ['', '  ']);
    const length = random.uniform() < oddShare ? 1 + random.integer(width + 2) : width;
    const cells = Array.from({ length }, () => {
      if (random.uniform() < emptyShare) return pick(random, ['', ' ']);
      return random.uniform() < oddShare ? drawOdd(random, separator) : drawNumber(random, decimal);
    });
    return (delimiter === null && random.uniform() < 0.3 ? '  ' : '') + cells.join(separator);
  });
  const fields = Array.from({ length: width }, (_, k) => k).filter(() => random.uniform() < 0.8);
  const wanted = fields.length === 0 ? [0] : fields;
  const slots = new Int8Array(Math.max(...wanted) + 1).fill(-1);
  wanted.forEach((field, slot) => (slots[field] = slot));
  return {
    text: rows.join('\n') + (random.uniform() < 0.8 ? '\n' : ''),
    layout: {
      separator: delimiter === null ? -1 : delimiter.charCodeAt(0),
      decimal: decimal as '.' | ',',
      slots,
      width: wanted.length,
    },
  };
}

describe('the byte scanner', () => {
  const cases = Number(process.env.GLOSS_FUZZ_CASES ?? 1500);

  it('equals csv-parse and Number bit for bit over drawn dialects, a third of the cases leaving the fast path', async () => {
    const random = seeded(20261);
    let left = 0;
    for (let i = 0; i < cases; i++) {
      const { text, layout } = drawCase(random);
      const got = await scanned(text, layout, pick(random, [1, 7, 64, 100000]));
      assertSame(got, await reference(text, layout), `${JSON.stringify(layout)} ${text}`);
      if (got.irregular > 0) left++;
    }
    assert.ok(left > cases / 3, `${left} of ${cases} left the fast path`);
    assert.ok(left < (cases * 2) / 3, `${left} of ${cases} left the fast path`);
  });

  const comma: RowLayout = { separator: 44, decimal: '.', slots: Int8Array.of(0, 1), width: 2 };

  it('reads on after a quote that nobody closes, and names its line', async () => {
    const lines = ['1,2', '3,"open', ...Array.from({ length: 30000 }, (_, k) => `${k},5`)];
    const got = await scanned(lines.join('\n'), comma, 1 << 14);
    assert.equal(got.rows, lines.length);
    assert.deepEqual(got.first, [{ line: 2, field: 2, text: '"open' }]);
    assert.equal(got.columns[0][got.rows - 1], 29999);
  });

  it('takes text after a closing quote as part of the cell', async () => {
    const got = await scanned('1,"2"x\n"3"y,4\n5,6\n', comma, 5);
    assert.equal(got.rows, 3);
    assert.deepEqual(got.first, [
      { line: 1, field: 2, text: '"2"x' },
      { line: 2, field: 1, text: '"3"y' },
    ]);
    assert.deepEqual([...got.columns[1]].slice(1), [4, 6]);
  });

  it('keeps the first 20 bad cells and counts the rest', async () => {
    const got = await scanned('1,x\n'.repeat(50), comma, 33);
    assert.equal(got.bad, 50);
    assert.equal(got.first.length, 20);
    assert.deepEqual(got.first[19], { line: 20, field: 2, text: 'x' });
  });
});
