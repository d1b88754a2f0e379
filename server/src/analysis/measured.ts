/**
 * A quantity read from a curve. `noise` is its standard uncertainty from signal noise alone, in the unit of `value`
 * (0 where noise was left out); `dof` the degrees of freedom of the noise estimate, null for many.
 */
export interface Measured {
  readonly value: number;
  readonly noise: number;
  readonly dof: number | null;
}

/** A quantity, or why there is none. */
export type Sought =
  { readonly measured: Measured; readonly reason: null } | { readonly measured: null; readonly reason: string };

export function found(measured: Measured): Sought {
  return { measured, reason: null };
}

export function notFound(reason: string): Sought {
  return { measured: null, reason };
}
