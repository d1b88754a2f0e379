import { seeded } from '../support/random';

/** The same seeded numbers, written for the program and for a reader that knows decimal points only. */
export interface BenchTable {
  readonly name: string;
  readonly ours: string;
  readonly plain: string;
}

const header = ['Time/s', 'T/°C', 'Mass/mg', 'DSC/mW'];

/** A run of four columns at ten readings a second: a ramp, a mass that falls, a heat flow. */
function numbers(rows: number, write: (value: number, places: number) => string): string[][] {
  const random = seeded(20262);
  return Array.from({ length: rows }, (_, i) => [
    write(i / 10, 1),
    write(30 + (i / 10) * (1 / 6) * (200_000 / rows) + 0.02 * random.normal(), 4),
    write(20 - (8 * i) / rows + 4e-4 * random.normal(), 5),
    write(-2 + (3 * i) / rows + 0.02 * random.normal(), 5),
  ]);
}

const fixed = (value: number, places: number): string => value.toFixed(places);

export function pointTable(rows: number): BenchTable {
  const cells = numbers(rows, fixed);
  const plain = cells.map((row) => row.join(',')).join('\n');
  return { name: 'point decimals', ours: `${header.join(',')}\n${plain}\n`, plain: `${plain}\n` };
}

/** Decimal commas; one cell in a thousand is no number. The plain reader gets the same table without those. */
export function commaTable(rows: number): BenchTable {
  const random = seeded(7);
  const cells = numbers(rows, fixed);
  const broken = (cell: string): string => (random.uniform() < 0.001 ? 'error' : cell.replace('.', ','));
  const rowsOf = cells.map((row) => row.map(broken).join(';'));
  const ours = `${header.join(';')}\n${rowsOf.join('\n')}\n`;
  return {
    name: 'decimal commas, 0.1 % error cells',
    ours,
    plain: `${cells.map((row) => row.join(',')).join('\n')}\n`,
  };
}

/** All digits of a double, as programs write them that do not round: 17 significant digits. */
export function longTable(rows: number): BenchTable {
  const cells = numbers(rows, (value) => (value + value * 1e-9 * Math.PI).toPrecision(17));
  const plain = cells.map((row) => row.join(',')).join('\n');
  return { name: '17 digits', ours: `${header.join(',')}\n${plain}\n`, plain: `${plain}\n` };
}
