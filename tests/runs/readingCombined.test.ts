import { strict as assert } from 'node:assert';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { detectAll } from '../../server/src/runs/reading/choices';
import { readRun } from '../../server/src/runs/reading/readRun';
import { seeded, type Random } from '../support/random';
import { signals } from '../support/readText';
import { writtenChoices } from '../support/writtenChoices';

const encodings: Readonly<Record<string, (text: string) => Uint8Array>> = {
  'utf-8': (text) => Buffer.from(text, 'utf8'),
  'utf-8 with a mark': (text) => Buffer.from(`\ufeff${text}`, 'utf8'),
  'utf-16le': (text) => Buffer.from(`\ufeff${text}`, 'utf16le'),
  'utf-16be': (text) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16(),
  'latin-1': (text) => Buffer.from(text, 'latin1'),
};
const lineEnds = ['\n', '\r\n', '\r'];
const dialects = [',.', ';.', ';,', '\t.', '\t,', '|.', '|,', ' .', ' ,'];

/** Ways to write the three headers; in one or two rows. */
const headers: readonly (readonly (readonly string[])[])[] = [
  [['Time/s', 'T/°C', 'Mass/µg']],
  [['Zeit (s)', 'Temp. (°C)', 'Masse (µg)']],
  [
    ['Temps', 'Température', 'Masse'],
    ['[s]', '[°C]', '[µg]'],
  ],
  [
    ['t', 'T', 'm'],
    ['s', '°C', 'µg'],
  ],
];

interface Drawn {
  readonly text: string;
  readonly dialect: string;
  readonly rows: readonly (readonly number[])[];
}

function draw(random: Random): Drawn {
  const dialect = dialects[random.integer(dialects.length)];
  const separator = dialect[0] === ' ' ? '   ' : dialect[0];
  const decimal = dialect[1];
  const rows = Array.from({ length: 4 + random.integer(40) }, (_, i) => [
    i / 2,
    25 + i / 10 + random.integer(100) / 1000,
    9000 - i * 3 + random.integer(1000) / 1000,
  ]);
  const preamble = random.uniform() < 0.5 ? [] : ['Sample: crushed brick (invented)', 'Note:  °C, µg', ''];
  const header = headers[random.integer(headers.length)];
  const footer = random.uniform() < 0.3 ? ['', 'end of the record'] : [];
  const lines = [
    ...preamble,
    ...header.map((row) => row.join(separator)),
    ...rows.map((row) => row.map((value) => value.toFixed(3).replace('.', decimal)).join(separator)),
    ...footer,
  ];
  return { text: lines.join('\n') + (random.uniform() < 0.7 ? '\n' : ''), dialect, rows };
}

describe('one table in many clothes', () => {
  it('gives the same columns in every encoding, with every line end, in every dialect, however it is split', async () => {
    const random = seeded(20263);
    const met = new Set<string>();
    for (let round = 0; round < 600; round++) {
      const { text, dialect, rows } = draw(random);
      const name = Object.keys(encodings)[random.integer(5)];
      const end = lineEnds[random.integer(3)];
      met.add(`${name} ${JSON.stringify(end)} ${dialect}`);
      const bytes = encodings[name](text.replaceAll('\n', end));
      const host = new MemoryHost({ 'run.csv': bytes }, '/lab', 1 + random.integer(300));
      const read = await readRun(host, '/lab/run.csv');
      const shown = `${name}, ${JSON.stringify(end)}: ${JSON.stringify(text.slice(0, 200))}`;
      assert.ok(read.ok, `${shown} ${read.ok ? '' : JSON.stringify(read.failure)}`);
      assert.deepEqual(signals(read.value), ['time s', 'temperature °C', 'mass mg'], shown);
      rows.forEach((row, i) => {
        const expected = [row[0], row[1], row[2]].map((value) => Number(value.toFixed(3)));
        read.value.columns.forEach(({ values }, k) => {
          assert.equal(values[i], k === 2 ? expected[k] / 1000 : expected[k], `${shown} row ${i}`);
        });
      });
      assert.equal(read.value.points, rows.length, shown);
      const { delimiter, decimal, encoding } = read.value.interpretation;
      assert.equal(delimiter ?? ' ', dialect[0], shown);
      assert.equal(decimal, dialect[1], shown);
      assert.equal(encoding, name.split(' ')[0], shown);
    }
    assert.ok(met.size > 120, `${met.size} of 135 combinations`);
  });

  it('never throws, whatever is in the file, and every statement it proposes can be read', async () => {
    const random = seeded(20264);
    let refused = 0;
    for (let round = 0; round < 1500; round++) {
      const bytes = Buffer.from(draw(random).text, random.uniform() < 0.8 ? 'utf8' : 'utf16le');
      for (let k = random.integer(12); k > 0; k--) {
        const at = random.integer(bytes.length);
        const kind = random.integer(4);
        if (kind === 0) bytes[at] = random.integer(256);
        else if (kind === 1) bytes[at] = 34;
        else if (kind === 2) bytes.copy(bytes, at, random.integer(bytes.length));
        else bytes.fill(random.uniform() < 0.5 ? 44 : 10, at, Math.min(bytes.length, at + random.integer(9)));
      }
      const file = bytes.subarray(0, random.uniform() < 0.2 ? random.integer(bytes.length) : bytes.length);
      const host = new MemoryHost({ 'run.csv': file }, '/lab', 1 + random.integer(200));
      const read = await readRun(host, '/lab/run.csv', { ...detectAll, block: random.uniform() < 0.1 ? 2 : null });
      if (read.ok) {
        for (const { values } of read.value.columns) assert.equal(values.length, read.value.points);
        continue;
      }
      refused++;
      assert.ok(read.failure.message.length > 0);
      if ('write' in read.failure && read.failure.write) writtenChoices(read.failure.write);
    }
    assert.ok(refused > 50 && refused < 1450, `${refused} refused`);
  });
});
