/** Exponents of m, kg, s, K, A, mol. */
export type Dimension = readonly [number, number, number, number, number, number];

/**
 * What a number is, beyond its dimension. A temperature *point* is not a temperature *difference*; a mass fraction
 * carries a basis; a plain number does not.
 */
export type Kind = 'number' | 'fraction' | 'temperature' | 'quantity';

export interface Unit {
  /** The normal spelling: `J/(g·K)`. */
  readonly text: string;
  /** value in SI = value · factor (+ offset). */
  readonly factor: number;
  /** Only °C has one (273.15), and only standing alone. */
  readonly offset: number;
  readonly dimension: Dimension;
}
