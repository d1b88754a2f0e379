import type { PreparedRun } from '../../evaluation/preparedRun';
import type { SignalName } from '../../language/model';
import type { Segment } from '../../runs/run';
import { isLone } from '../../runs/segmentation/samples';

/**
 * The temperature (°C) of each sample of a signal in one segment. A reading of the run's own file has the one read beside
 * it, noise and all; samples on another clock (a joined file, the derived rate), and those beside which no usable one was
 * read, have that of the fitted programme.
 */
export function temperaturesOf(
  run: PreparedRun,
  segment: Segment,
  signal: SignalName,
  time: Float64Array,
): Float64Array | null {
  const read = run.temperature;
  if (read === null) return null;
  const own = run.raw.columns.find((c) => c.signal === signal)?.values ?? null;
  const rows = own === null ? null : rowsOf(run.time, own, time, segment.first);
  const fitted = (at: number): number => run.map(segment)?.temperatureAt(at) ?? NaN;
  if (rows === null) return time.map(fitted);
  return time.map((t, i) => {
    const value = read[rows[i]];
    return Number.isFinite(value) && !isLone(read, rows[i]) ? value : fitted(t);
  });
}

/**
 * The rows that samples were read in; null where they are not rows of this file. Rows that were left out (no number, a
 * time gone back) are passed.
 */
function rowsOf(rowTimes: Float64Array, values: Float64Array, time: Float64Array, start: number): Uint32Array | null {
  const rows = new Uint32Array(time.length);
  let row = Math.max(0, Math.min(start, rowTimes.length));
  // A row that went back in time can stand before the segment's first.
  while (row > 0 && rowTimes[row - 1] >= time[0]) row--;
  for (let i = 0; i < time.length; i++, row++) {
    while (row < rowTimes.length && !(rowTimes[row] === time[i] && Number.isFinite(values[row]))) row++;
    if (row === rowTimes.length) return null;
    rows[i] = row;
  }
  return rows;
}
