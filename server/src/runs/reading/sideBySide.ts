import type { SignalName } from '../../language/model';

/**
 * Several runs side by side: the same signals in the same order again and again. Returns the column indices of each run,
 * or null where the columns are of one run. `signals` has one entry a column, null for what is no signal.
 */
export function sideBySide(signals: readonly (SignalName | null)[]): readonly (readonly number[])[] | null {
  const columns = signals.flatMap((signal, k) => (signal === null ? [] : [k]));
  for (let length = 2; length * 2 <= columns.length; length++) {
    if (columns.length % length !== 0) continue;
    const own = columns.slice(0, length).map((k) => signals[k]);
    if (new Set(own).size !== length) continue;
    if (!columns.every((k, at) => signals[k] === own[at % length])) continue;
    return Array.from({ length: columns.length / length }, (_, b) => columns.slice(b * length, (b + 1) * length));
  }
  return null;
}
