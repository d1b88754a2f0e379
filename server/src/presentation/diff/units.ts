import { sameDimension } from '../../quantities/dimension';
import { parseUnit } from '../../quantities/parseUnit';

/** What a value in `from` is multiplied with to be in `to`; null where they measure different things or one has a zero of its own. */
export function convertedTo(from: string, to: string): number | null {
  if (from === to) return 1;
  const a = parseUnit(from);
  const b = parseUnit(to);
  if (!a.ok || !b.ok || !sameDimension(a.value.dimension, b.value.dimension)) return null;
  if (a.value.offset !== 0 || b.value.offset !== 0) return null;
  return a.value.factor / b.value.factor;
}
