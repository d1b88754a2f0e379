import { extentOf } from '../../analysis/extent';

/** Samples that can be used for segments: finite, time strictly increasing, no lone foreign temperature. */
export interface Samples {
  readonly time: Float64Array;
  readonly temperature: Float64Array;
  /** Index in the file of each sample; null: all rows are used. */
  readonly rows: Int32Array | null;
}

/** A temperature further (K) from both its neighbours may be foreign. */
const foreign = 5;

/**
 * Keeps what a programme can be read from. A single temperature that lies far outside its neighbours (a placeholder row,
 * a lost digit) is left out: more than 5 K and more than twice their range beyond them.
 */
export function usableSamples(time: Float64Array, temperature: Float64Array): Samples {
  const n = Math.min(time.length, temperature.length);
  const clock = extentOf(time);
  const way = extentOf(temperature);
  if (time.length === temperature.length && clock.finite && clock.leastStep > 0 && way.finite) {
    if (way.leastStep >= -foreign && way.mostStep <= foreign) return { time, temperature, rows: null };
  }
  let count = 0;
  const isUsed = new Uint8Array(n);
  let latest = -Infinity;
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(temperature[i]) || !(time[i] > latest) || time[i] === Infinity) continue;
    if (isLone(temperature, i, n)) continue;
    latest = time[i];
    isUsed[i] = 1;
    count++;
  }
  if (count === n) return { time, temperature, rows: null };
  const rows = new Int32Array(count);
  for (let i = 0, k = 0; i < n; i++) if (isUsed[i] === 1) rows[k++] = i;
  return {
    time: Float64Array.from(rows, (i) => time[i]),
    temperature: Float64Array.from(rows, (i) => temperature[i]),
    rows,
  };
}

/** Whether the temperature of row `i` lies far outside those of the two rows before and after it. */
export function isLone(temperature: Float64Array, i: number, n = temperature.length): boolean {
  const value = temperature[i];
  const before = i > 0 ? temperature[i - 1] : temperature[i + 1];
  const after = i + 1 < n ? temperature[i + 1] : temperature[i - 1];
  // The usual case first: between or near its neighbours.
  if (!(Math.abs(value - before) > foreign && Math.abs(value - after) > foreign)) return false;
  let least = Infinity;
  let most = -Infinity;
  let seen = 0;
  const from = Math.max(0, Math.min(i - 2, n - 5));
  for (let j = from; j < Math.min(n, from + 5); j++) {
    if (j === i || !Number.isFinite(temperature[j])) continue;
    least = Math.min(least, temperature[j]);
    most = Math.max(most, temperature[j]);
    seen++;
  }
  return seen >= 3 && Math.max(least - value, value - most) > Math.max(foreign, 2 * (most - least));
}

/** Robust standard deviation of the noise of a temperature, from second differences of at most 4000 triples. */
export function temperatureNoise(temperature: Float64Array): number {
  const n = temperature.length;
  if (n < 8) return 0;
  const step = Math.max(1, Math.floor((n - 2) / 4000));
  const sizes = new Float64Array(Math.ceil((n - 2) / step));
  for (let i = 1, k = 0; i + 1 < n; i += step, k++) {
    sizes[k] = Math.abs(temperature[i - 1] - 2 * temperature[i] + temperature[i + 1]);
  }
  sizes.sort();
  return (1.4826 * sizes[sizes.length >> 1]) / Math.sqrt(6);
}
