import type { PreparedRun } from '../../evaluation/preparedRun';
import type { SignalName } from '../../language/model';
import type { Segment } from '../../runs/run';

/**
 * The temperature (°C) of each sample of a signal in one segment. A reading of the run's own file has the one read beside
 * it, noise and all; samples on another clock (a joined file, the derived rate) have that of the fitted programme.
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
  const beside = own === null ? null : besideReadings(run.time, read, own, time, segment.first);
  if (beside !== null) return beside;
  const map = run.map(segment);
  return map === null ? null : time.map((t) => map.temperatureAt(t));
}

/** Null where the samples are not rows of this file. Rows that were left out (no number, a time gone back) are passed. */
function besideReadings(
  rows: Float64Array,
  temperature: Float64Array,
  values: Float64Array,
  time: Float64Array,
  start: number,
): Float64Array | null {
  const found = new Float64Array(time.length);
  let row = Math.max(0, Math.min(start, rows.length));
  // A row that went back in time can stand before the segment's first.
  while (row > 0 && rows[row - 1] >= time[0]) row--;
  for (let i = 0; i < time.length; i++, row++) {
    while (row < rows.length && !(rows[row] === time[i] && Number.isFinite(values[row]))) row++;
    if (row === rows.length) return null;
    found[i] = temperature[row];
  }
  return found;
}
