import { sortedBy } from './sortedBy';

/** The places of samples along an abscissa that only ascends. */
export interface Ascending {
  /** Finite, never falling; equal values are kept. */
  readonly x: Float64Array;
  /** Index of the sample at each place; null: the samples stand in this order already. */
  readonly order: Uint32Array | null;
}

/**
 * Samples put in ascending order of an abscissa: as they are where it ascends, turned round on a cooling ramp, sorted
 * where it runs back in noise or stands still. Equal values keep the order of the data (turned round where the whole
 * falls). Samples without a finite value are left out. O(n).
 */
export function ascending(values: Float64Array): Ascending {
  const n = values.length;
  let rises = true;
  let falls = true;
  let finite = true;
  for (let i = 0; i < n; i++) {
    finite &&= Number.isFinite(values[i]);
    if (i === 0) continue;
    rises &&= values[i] >= values[i - 1];
    falls &&= values[i] <= values[i - 1];
  }
  if (finite && rises) return { x: values, order: null };
  const kept = finite ? n : values.reduce((count, v) => count + (Number.isFinite(v) ? 1 : 0), 0);
  const order = new Uint32Array(kept);
  for (let i = 0, k = 0; i < n; i++) if (Number.isFinite(values[i])) order[k++] = i;
  const down = finite ? values[n - 1] < values[0] : kept > 0 && values[order[kept - 1]] < values[order[0]];
  if (down) order.reverse();
  const sorted = finite && falls ? order : sortedBy(values, order);
  const x = new Float64Array(kept);
  for (let k = 0; k < kept; k++) x[k] = values[sorted[k]];
  return { x, order: sorted };
}
