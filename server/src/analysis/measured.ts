/**
 * A quantity read from a curve. `noise` is its standard uncertainty from signal noise alone, in the unit of `value`
 * (0 where noise was left out); `dof` the degrees of freedom of the noise estimate, null for many.
 */
export interface Measured {
  readonly value: number;
  readonly noise: number;
  readonly dof: number | null;
}
