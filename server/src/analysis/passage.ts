/** A passage of a signal through a value. */
export interface Passage {
  readonly time: number;
  /** Samples before and after the crossing taken. */
  readonly before: number;
  readonly direction: 'rising' | 'falling';
  /** Single crossings the passage consists of; 1 unless noise crosses to and fro. */
  readonly crossings: number;
}

/**
 * The passages of a signal through zero among the samples `first` to `last` (exclusive); `value` gives the signal less
 * the value sought.
 *
 * A passage leads from one side to the other, and it counts once the signal is beyond `band` on the new side; crossings
 * before that are one passage, however often noise crosses, and its time is that of the middle crossing. What comes back
 * without having been beyond `band` never passed. With `band` 0 every crossing is a passage. With `hold` the signal must
 * besides stay on the new side for so long, or to the last sample. Between samples it is a straight line, exactly.
 *
 * `past` may say how far on from sample `i` the signal certainly stays below zero (or not below): the first sample not known;
 * these are then not looked at.
 */
export function passages(
  x: Float64Array,
  value: (i: number) => number,
  first: number,
  last: number,
  band: number,
  hold = 0,
  past?: (i: number, below: boolean) => number,
): Passage[] {
  const found: Passage[] = [];
  if (last - first < 2) return found;
  /** The samples before the crossings that are not decided yet. */
  let pending: number[] = [];
  const timeOf = (before: number): number => {
    const [a, b] = [value(before), value(before + 1)];
    return x[before] + (x[before + 1] - x[before]) * (a / (a - b));
  };
  let previous = value(first);
  let side = previous < 0 ? -1 : 1;
  let beyond = false;
  for (let i = first + 1; i < last; i++) {
    const now = value(i);
    if (previous < 0 !== now < 0) {
      beyond = false;
      pending.push(i - 1);
    }
    previous = now;
    if (pending.length === 0) {
      const next = past === undefined ? i + 1 : Math.min(past(i + 1, now < 0), last);
      if (next > i + 1) {
        i = next - 1;
        previous = value(i);
      }
      continue;
    }
    if (now !== 0 && Math.abs(now) >= band) beyond = true;
    if (!beyond) continue;
    const here = now < 0 ? -1 : 1;
    if (here !== side) {
      if (x[i] - timeOf(pending[pending.length - 1]) < hold && i < last - 1) continue;
      const before = pending[(pending.length - 1) >> 1];
      const time = timeOf(before);
      found.push({ time, before, direction: here > 0 ? 'rising' : 'falling', crossings: pending.length });
      side = here;
    }
    pending = [];
  }
  return found;
}
