/** One measured figure beside its limit. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 'kB' | 'MB' | '×';
  /** The value must not exceed it; null: shown only. */
  readonly limit: number | null;
  /** How it came about: what it was compared with, or why there is no comparison. */
  readonly note: string;
}

/** A measurement that could not be made here, and why. */
export interface NotRun {
  readonly name: string;
  readonly reason: string;
}

export type Bench = () => Promise<readonly (BenchRow | NotRun)[]>;

export interface Timing {
  readonly median: number;
  readonly p95: number;
}

/** Milliseconds of `runs` repetitions after `warmUps` that do not count. */
export async function time(work: () => unknown, runs = 15, warmUps = 3): Promise<Timing> {
  const times: number[] = [];
  for (let k = 0; k < warmUps + runs; k++) {
    const start = performance.now();
    await work();
    if (k >= warmUps) times.push(performance.now() - start);
  }
  return summary(times);
}

export function summary(times: readonly number[]): Timing {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: sorted[sorted.length >> 1], p95: sorted[Math.ceil(0.95 * sorted.length) - 1] };
}

/** Runs the benches one after the other, prints a table, and gives the number of rows over their limit. */
export async function report(benches: Readonly<Record<string, Bench>>): Promise<number> {
  let over = 0;
  for (const [title, bench] of Object.entries(benches)) {
    console.log(`\n${title}`);
    for (const row of await bench()) {
      if ('reason' in row) {
        console.log(`  ${row.name.padEnd(72)}      not run: ${row.reason}`);
        continue;
      }
      const isOver = row.limit !== null && !(row.value <= row.limit);
      if (isOver) over++;
      const limit = row.limit === null ? '' : `at most ${row.limit} ${row.unit} ${isOver ? 'MISSED' : 'met'}`;
      const value = row.value.toFixed(row.unit === '×' ? 2 : 1).padStart(9);
      console.log(`  ${row.name.padEnd(72)}${value} ${row.unit.padEnd(3)} ${limit.padEnd(22)} ${row.note}`.trimEnd());
    }
  }
  return over;
}
